package org.limbspan.platform.reads;

import java.lang.reflect.Method;
import java.sql.SQLException;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.aopalliance.intercept.MethodInterceptor;
import org.aopalliance.intercept.MethodInvocation;
import org.jspecify.annotations.Nullable;
import org.springframework.aop.ProxyMethodInvocation;
import org.springframework.aop.support.StaticMethodMatcherPointcut;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Reads once more, from the primary, what could not be read from the standby: it may have died, or
 * have ended the query because what it read was about to be replayed away. What was not found there
 * is asked for again, too: another instance may just have entered it.
 */
final class SecondTry implements MethodInterceptor {

  private static final int DEPTH = 20;

  private final Supplier<Standby> standby;

  SecondTry(Supplier<Standby> standby) {
    this.standby = standby;
  }

  /** Methods that are a read-only transaction. */
  static final class Reading extends StaticMethodMatcherPointcut {

    @Override
    public boolean matches(Method method, Class<?> type) {
      Transactional its = AnnotatedElementUtils.findMergedAnnotation(method, Transactional.class);
      return its != null && its.readOnly();
    }
  }

  @Override
  public @Nullable Object invoke(MethodInvocation call) throws Throwable {
    Optional<PageRead> page = PageRead.current();
    if (page.isEmpty() || TransactionSynchronizationManager.isActualTransactionActive()) {
      return call.proceed();
    }
    MethodInvocation again = ((ProxyMethodInvocation) call).invocableClone();
    try {
      return call.proceed();
    } catch (RuntimeException failed) {
      if (!page.get().wentToStandby()) {
        throw failed;
      }
      if (isOfDatabase(failed)) {
        standby.get().distrust(failed);
      }
      page.get().stayOnPrimary();
      return again.proceed();
    }
  }

  private static boolean isOfDatabase(Throwable failed) {
    return Stream.iterate(failed, Objects::nonNull, Throwable::getCause)
        .limit(DEPTH)
        .anyMatch(cause -> cause instanceof SQLException || cause instanceof TransactionException);
  }
}
