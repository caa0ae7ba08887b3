package org.limbspan.platform.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.limbspan.platform.Refused;
import org.springframework.http.HttpHeaders;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/** Lets nobody try another password who has failed too often, not even the right one. */
final class AttemptsFilter extends OncePerRequestFilter {

  private static final String WAIT_S = "60";

  private final Attempts attempts;
  private final HandlerExceptionResolver problems;

  AttemptsFilter(Attempts attempts, HandlerExceptionResolver problems) {
    this.attempts = attempts;
    this.problems = problems;
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    if (!isLogin(request) || !attempts.mustWait(request.getRemoteAddr())) {
      chain.doFilter(request, response);
      return;
    }
    response.setHeader(HttpHeaders.RETRY_AFTER, WAIT_S);
    problems.resolveException(
        request,
        response,
        null,
        Refused.tooOften(
            Attempts.MOST
                + " logins from this address failed within a minute; wait until it is over."));
  }

  private static boolean isLogin(HttpServletRequest request) {
    return request.getHeader(HttpHeaders.AUTHORIZATION) != null
        || (request.getMethod().equals("POST")
            && request.getRequestURI().equals(AccessRules.LOGIN));
  }
}
