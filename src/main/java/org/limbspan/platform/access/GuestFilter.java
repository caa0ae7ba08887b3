package org.limbspan.platform.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.limbspan.platform.GuestBook;
import org.limbspan.platform.Visitor;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.WebUtils;

/** Takes the cookie of a guest's link, where nobody else is known. */
final class GuestFilter extends OncePerRequestFilter {

  private final GuestBook guests;

  GuestFilter(GuestBook guests) {
    this.guests = guests;
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    Optional<String> slug = slug(request);
    if (slug.isEmpty()) {
      chain.doFilter(request, response);
      return;
    }
    SecurityContext before = SecurityContextHolder.getContext();
    SecurityContext context = SecurityContextHolder.createEmptyContext();
    context.setAuthentication(
        UsernamePasswordAuthenticationToken.authenticated(
            slug.get(), null, List.of(new SimpleGrantedAuthority(Visitor.GUEST_ROLE))));
    SecurityContextHolder.setContext(context);
    try {
      chain.doFilter(request, response);
    } finally {
      SecurityContextHolder.setContext(before);
    }
  }

  private Optional<String> slug(HttpServletRequest request) {
    Cookie cookie = WebUtils.getCookie(request, GuestBook.COOKIE);
    boolean known =
        request.getHeader(HttpHeaders.AUTHORIZATION) != null
            || SecurityContextHolder.getContext().getAuthentication() != null;
    return cookie == null || known ? Optional.empty() : guests.rigFor(cookie.getValue());
  }
}
