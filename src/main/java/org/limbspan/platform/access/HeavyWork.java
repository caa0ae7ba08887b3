package org.limbspan.platform.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.limbspan.platform.Unavailable;
import org.springframework.http.HttpHeaders;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/** Lets only so many at a time send or fetch much; the others wait a while for their turn. */
final class HeavyWork extends OncePerRequestFilter {

  private static final String RETRY_S = "5";

  private final Semaphore places;
  private final Duration patience;
  private final HandlerExceptionResolver problems;

  HeavyWork(int atOnce, Duration patience, HandlerExceptionResolver problems) {
    this.places = new Semaphore(atOnce, true);
    this.patience = patience;
    this.problems = problems;
  }

  static boolean isPhotographs(HttpServletRequest request) {
    String type = request.getContentType();
    return type != null && type.startsWith("multipart/");
  }

  static boolean isLedger(HttpServletRequest request) {
    return request.getRequestURI().equals("/api/ledger")
        || request.getRequestURI().endsWith("/ledger.zip");
  }

  private static boolean isCsv(HttpServletRequest request) {
    String type = request.getContentType();
    return type != null && type.startsWith("text/csv");
  }

  @Override
  protected boolean shouldNotFilter(HttpServletRequest request) {
    return !(isPhotographs(request) || isLedger(request) || isCsv(request));
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    if (!hasPlace()) {
      response.setHeader(HttpHeaders.RETRY_AFTER, RETRY_S);
      problems.resolveException(
          request,
          response,
          null,
          new Unavailable(
              "Too many are sending or fetching much just now; nothing was stored, send it again."));
      return;
    }
    try {
      chain.doFilter(request, response);
    } finally {
      places.release();
    }
  }

  private boolean hasPlace() {
    try {
      return places.tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
