package org.limbspan.testing.browser;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.springframework.core.env.Environment;
import org.springframework.test.context.junit.jupiter.SpringExtension;

/** Opens the browser, hands out a {@link Visitor}, and asks it afterwards what it had to bear. */
final class BrowserExtension implements ExecutionCondition, ParameterResolver, AfterEachCallback {

  private static final Namespace NAMESPACE = Namespace.create(BrowserExtension.class);

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    Optional<Path> program = BrowserProgram.find();
    return program.isPresent()
        ? ConditionEvaluationResult.enabled("browser: " + program.get())
        : ConditionEvaluationResult.disabled(
            "no Chromium is installed here and "
                + BrowserProgram.VARIABLE
                + " names none, so the pages were not visited");
  }

  @Override
  public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
    return parameter.getParameter().getType() == Visitor.class;
  }

  @Override
  public Visitor resolveParameter(ParameterContext parameter, ExtensionContext context) {
    return context
        .getStore(NAMESPACE)
        .computeIfAbsent(Visitor.class, key -> visitor(context), Visitor.class);
  }

  @Override
  public void afterEach(ExtensionContext context) {
    Visitor visitor = context.getStore(NAMESPACE).remove(Visitor.class, Visitor.class);
    if (visitor != null) {
      visitor.leave();
    }
  }

  private static Visitor visitor(ExtensionContext context) {
    SharedBrowser shared =
        context
            .getRoot()
            .getStore(NAMESPACE)
            .computeIfAbsent(
                SharedBrowser.class,
                key -> new SharedBrowser(BrowserProgram.find().orElseThrow()),
                SharedBrowser.class);
    Environment environment = SpringExtension.getApplicationContext(context).getEnvironment();
    return new Visitor(
        shared.browser(),
        "http://127.0.0.1:" + environment.getRequiredProperty("local.server.port"));
  }
}
