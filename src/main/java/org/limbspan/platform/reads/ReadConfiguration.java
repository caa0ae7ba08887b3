package org.limbspan.platform.reads;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.time.Clock;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.aop.support.DefaultPointcutAdvisor;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.beans.factory.config.BeanDefinition;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.autoconfigure.condition.ConditionMessage;
import org.springframework.boot.autoconfigure.condition.ConditionOutcome;
import org.springframework.boot.autoconfigure.condition.SpringBootCondition;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Role;
import org.springframework.core.Ordered;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.jdbc.datasource.LazyConnectionDataSourceProxy;
import org.springframework.util.StringUtils;

/** Puts the choice of where to read before the pool that Spring Boot makes. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(ReadProperties.class)
class ReadConfiguration {

  private static final String STANDBY = "limbspan.reads.standby-url";

  @Bean
  static BeanPostProcessor readsApart(
      ObjectProvider<ReadProperties> properties,
      ObjectProvider<Writes> writes,
      ObjectProvider<Standby> standby) {
    return new BeanPostProcessor() {
      @Override
      public Object postProcessAfterInitialization(Object bean, String name) {
        return bean instanceof HikariDataSource pool
            ? choosing(pool, properties.getObject(), writes.getObject(), standby.getIfAvailable())
            : bean;
      }
    };
  }

  /**
   * The defaults are said and not asked for: the database need not answer yet. A read is no write,
   * and is not counted as one where it goes to the primary.
   */
  private static DataSource choosing(
      DataSource pool, ReadProperties properties, Writes writes, @Nullable Standby standby) {
    LazyConnectionDataSourceProxy choice = new LazyConnectionDataSourceProxy();
    choice.setDefaultAutoCommit(true);
    choice.setDefaultTransactionIsolation(Connection.TRANSACTION_READ_COMMITTED);
    choice.setTargetDataSource(standby == null ? pool : new CountedWrites(pool, writes));
    choice.setReadOnlyDataSource(new ReadSource(pool, standby, properties.patience()));
    return choice;
  }

  @Bean
  Writes writes() {
    return new Writes();
  }

  /** With a standby. */
  @Configuration(proxyBeanMethods = false)
  @Conditional(StandbyNamed.class)
  static class WithStandby {

    @Bean(destroyMethod = "close")
    Standby standby(
        JdbcConnectionDetails primary,
        ReadProperties properties,
        Writes writes,
        Clock clock,
        @Value("${" + STANDBY + "}") String url,
        @Value("${spring.datasource.hikari.maximum-pool-size}") int connections,
        @Value("${spring.datasource.hikari.connection-init-sql}") String initSql) {
      Account own = Account.ofPrimary(primary);
      Account other = Account.ofStandby(url, properties, own);
      return new Standby(own, other, connections, initSql, writes, properties, clock);
    }

    /** Around the transaction, so that the second try is one of its own. */
    @Bean
    @Role(BeanDefinition.ROLE_INFRASTRUCTURE)
    static DefaultPointcutAdvisor secondTry(ObjectProvider<Standby> standby) {
      DefaultPointcutAdvisor advisor =
          new DefaultPointcutAdvisor(new SecondTry.Reading(), new SecondTry(standby::getObject));
      advisor.setOrder(Ordered.HIGHEST_PRECEDENCE);
      return advisor;
    }

    @Bean
    HealthIndicator standbyHealthIndicator(Standby standby) {
      return new StandbyHealth(standby);
    }
  }

  static final class StandbyNamed extends SpringBootCondition {

    @Override
    public ConditionOutcome getMatchOutcome(
        ConditionContext context, AnnotatedTypeMetadata metadata) {
      boolean named = StringUtils.hasText(context.getEnvironment().getProperty(STANDBY));
      return new ConditionOutcome(
          named, ConditionMessage.of(STANDBY + (named ? " is" : " is not") + " given"));
    }
  }
}
