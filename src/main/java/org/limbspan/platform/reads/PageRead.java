package org.limbspan.platform.reads;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpMethod;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;
import org.springframework.web.servlet.HandlerMapping;

/**
 * The request that this thread answers, if it only asks. Where its first read went, the later ones
 * go: one page does not mix two states.
 */
final class PageRead {

  private static final String FROM_STANDBY = PageRead.class.getName();
  private static final Set<String> ASKING = Set.of(HttpMethod.GET.name(), HttpMethod.HEAD.name());

  private final HttpServletRequest request;

  private PageRead(HttpServletRequest request) {
    this.request = request;
  }

  /**
   * Empty before a handler was found: who may come in is asked of the primary. Empty, too, for
   * exports, which may last: their answer is streamed by another thread, or their transaction wants
   * one state for its whole length.
   */
  static Optional<PageRead> current() {
    return RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes web
            && ASKING.contains(web.getRequest().getMethod())
            && web.getRequest().getAttribute(HandlerMapping.BEST_MATCHING_HANDLER_ATTRIBUTE) != null
            && !web.getRequest().isAsyncStarted()
            && TransactionSynchronizationManager.getCurrentTransactionIsolationLevel() == null
        ? Optional.of(new PageRead(web.getRequest()))
        : Optional.empty();
  }

  /** Whether the standby is to be read; asks only for the first read whether it may be. */
  boolean goesToStandby(BooleanSupplier isFit) {
    Boolean decided = fromStandby();
    if (decided == null) {
      decided = isFit.getAsBoolean();
      request.setAttribute(FROM_STANDBY, decided);
    }
    return decided;
  }

  boolean wentToStandby() {
    return Boolean.TRUE.equals(fromStandby());
  }

  /** From now on. */
  void stayOnPrimary() {
    request.setAttribute(FROM_STANDBY, false);
  }

  private @Nullable Boolean fromStandby() {
    return (Boolean) request.getAttribute(FROM_STANDBY);
  }
}
