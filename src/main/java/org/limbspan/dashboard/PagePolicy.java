package org.limbspan.dashboard;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Tells the browser to load nothing from elsewhere and to run nothing written into a page. */
@Component
class PagePolicy extends OncePerRequestFilter {

  private static final String POLICY =
      "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none';"
          + " object-src 'none'";

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    response.setHeader("Content-Security-Policy", POLICY);
    response.setHeader("Referrer-Policy", "same-origin");
    response.setHeader("Permissions-Policy", "geolocation=(self), camera=(), microphone=()");
    chain.doFilter(request, response);
  }
}
