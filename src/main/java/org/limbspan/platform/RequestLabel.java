package org.limbspan.platform;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.slf4j.MDC;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.core.Ordered;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Gives each request an id of its own, whatever the client says: in every line of the log that is
 * written on the way, in the header {@value #HEADER} of the answer, and in a problem's body. The
 * rig that the path names goes into the log beside it.
 */
final class RequestLabel extends OncePerRequestFilter {

  static final String HEADER = "Limbspan-Request";

  private static final String ATTRIBUTE = RequestLabel.class.getName();
  private static final int ID_BYTES = 8;
  private static final Pattern RIG =
      Pattern.compile("/(?:api/)?rigs/(?!new(?:/|$))([a-z0-9-]{1,40})(?:/.*)?");

  private final SecureRandom random = new SecureRandom();

  /** Before everything else, also when a request is taken up again. */
  @Component
  static final class Registration extends FilterRegistrationBean<RequestLabel> {

    Registration() {
      super(new RequestLabel());
      setOrder(Ordered.HIGHEST_PRECEDENCE);
      setDispatcherTypes(
          EnumSet.of(DispatcherType.REQUEST, DispatcherType.ASYNC, DispatcherType.ERROR));
    }
  }

  /** The id of a request; null for one that did not come through this filter. */
  static @Nullable String of(HttpServletRequest request) {
    return request.getAttribute(ATTRIBUTE) instanceof String id ? id : null;
  }

  @Override
  protected boolean shouldNotFilterAsyncDispatch() {
    return false;
  }

  @Override
  protected boolean shouldNotFilterErrorDispatch() {
    return false;
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    String id = of(request);
    if (id == null) {
      id = fresh();
      request.setAttribute(ATTRIBUTE, id);
    }
    response.setHeader(HEADER, id);
    Matcher rig = RIG.matcher(request.getRequestURI());
    MDC.put("request", id);
    if (rig.matches()) {
      MDC.put("rig", rig.group(1));
    }
    try {
      chain.doFilter(request, response);
    } finally {
      MDC.remove("request");
      MDC.remove("rig");
    }
  }

  private String fresh() {
    byte[] bytes = new byte[ID_BYTES];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }
}
