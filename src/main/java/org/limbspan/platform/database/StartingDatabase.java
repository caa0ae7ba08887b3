package org.limbspan.platform.database;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.beans.factory.support.BeanDefinitionRegistry;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.context.annotation.ImportBeanDefinitionRegistrar;
import org.springframework.core.env.Environment;
import org.springframework.core.type.AnnotationMetadata;

/**
 * The embedded PostgreSQL on its way: it starts while the rest of the service is put together, for
 * a seventh of the time that this takes. If the service fails before it wants the database, what
 * was started is stopped.
 */
final class StartingDatabase implements DisposableBean {

  private final CompletableFuture<EmbeddedDatabase> start;
  private boolean handedOver;

  private StartingDatabase(String home) {
    start =
        CompletableFuture.supplyAsync(
            () -> EmbeddedDatabase.start(home), task -> new Thread(task, "database-start").start());
  }

  /**
   * The running database, which is the caller's to close.
   *
   * @throws org.limbspan.platform.StartRefused if the home or the data in it cannot be used
   */
  synchronized EmbeddedDatabase get() {
    handedOver = true;
    try {
      return start.join();
    } catch (CompletionException e) {
      throw e.getCause() instanceof RuntimeException refused ? refused : e;
    }
  }

  /** Stops what nobody took over. */
  @Override
  public synchronized void destroy() {
    if (handedOver) {
      return;
    }
    EmbeddedDatabase database;
    try {
      database = get();
    } catch (RuntimeException e) {
      return; // it did not start: there is nothing to stop
    }
    database.close();
  }

  /** Begins the start as soon as it is known that no other server is named. */
  static final class Registrar implements ImportBeanDefinitionRegistrar {

    private final String home;

    Registrar(Environment environment) {
      home = environment.getRequiredProperty("limbspan.home");
    }

    @Override
    public void registerBeanDefinitions(
        AnnotationMetadata importing, BeanDefinitionRegistry registry) {
      String name = "startingDatabase";
      StartingDatabase starting = new StartingDatabase(home);
      DefaultListableBeanFactory beans = (DefaultListableBeanFactory) registry;
      beans.registerSingleton(name, starting);
      beans.registerDisposableBean(name, starting);
    }
  }
}
