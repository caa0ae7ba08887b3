package org.limbspan.platform.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.limbspan.platform.Refused;
import org.limbspan.platform.RigKeyRing;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/** Takes {@code Authorization: Bearer KEY} (RFC 6750) for the rig whose key it is. */
final class RigKeyFilter extends OncePerRequestFilter {

  private static final String BEARER = "bearer ";

  private final RigKeyRing keys;
  private final Attempts attempts;
  private final HandlerExceptionResolver problems;

  RigKeyFilter(RigKeyRing keys, Attempts attempts, HandlerExceptionResolver problems) {
    this.keys = keys;
    this.attempts = attempts;
    this.problems = problems;
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    String header = request.getHeader(HttpHeaders.AUTHORIZATION);
    if (header == null || !header.toLowerCase(Locale.ROOT).startsWith(BEARER)) {
      chain.doFilter(request, response);
      return;
    }
    Optional<String> slug = keys.rigOf(header.substring(BEARER.length()).strip());
    if (slug.isEmpty()) {
      attempts.failed(request.getRemoteAddr());
      response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer error=\"invalid_token\"");
      problems.resolveException(
          request,
          response,
          null,
          Refused.unauthenticated("This key opens no rig: it is mistyped, or was revoked."));
      return;
    }
    SecurityContext context = SecurityContextHolder.createEmptyContext();
    context.setAuthentication(
        UsernamePasswordAuthenticationToken.authenticated(
            slug.get(), null, List.of(new SimpleGrantedAuthority(AccessRules.RIG))));
    SecurityContextHolder.setContext(context);
    try {
      chain.doFilter(request, response);
    } finally {
      SecurityContextHolder.clearContext();
    }
  }
}
