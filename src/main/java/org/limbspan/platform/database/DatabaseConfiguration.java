package org.limbspan.platform.database;

import org.springframework.boot.autoconfigure.condition.ConditionMessage;
import org.springframework.boot.autoconfigure.condition.ConditionOutcome;
import org.springframework.boot.autoconfigure.condition.SpringBootCondition;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;

/** Brings the embedded PostgreSQL unless {@code spring.datasource.url} names a server. */
@Configuration(proxyBeanMethods = false)
@Conditional(DatabaseConfiguration.NoServerNamed.class)
@Import(StartingDatabase.Registrar.class)
class DatabaseConfiguration {

  @Bean(destroyMethod = "close")
  EmbeddedDatabase embeddedDatabase(StartingDatabase starting) {
    return starting.get();
  }

  static final class NoServerNamed extends SpringBootCondition {

    @Override
    public ConditionOutcome getMatchOutcome(
        ConditionContext context, AnnotatedTypeMetadata metadata) {
      boolean named =
          StringUtils.hasText(context.getEnvironment().getProperty("spring.datasource.url"));
      return new ConditionOutcome(
          !named,
          ConditionMessage.of("spring.datasource.url " + (named ? "is" : "is not") + " given"));
    }
  }
}
