package org.limbspan.platform.access;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.Doorkeeper;
import org.limbspan.platform.GuestBook;
import org.limbspan.platform.Refused;
import org.limbspan.platform.RigKeyRing;
import org.limbspan.platform.Visitor;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.web.server.autoconfigure.ServerProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Lazy;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.authorization.AuthorizationResult;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.config.observation.SecurityObservationSettings;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.userdetails.User;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.provisioning.InMemoryUserDetailsManager;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import org.springframework.security.web.authentication.logout.LogoutFilter;
import org.springframework.security.web.authentication.www.BasicAuthenticationFilter;
import org.springframework.security.web.context.SecurityContextHolderFilter;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.web.servlet.HandlerExceptionResolver;

/** One chain for every request: headers, guard, and the owner's password where it is needed. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties({AccessProperties.class, LimitProperties.class})
class SecurityConfiguration {

  static final String OWNER = "owner";
  private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS", "TRACE");

  private static final String CONTENT_SECURITY_POLICY =
      "default-src 'self'; base-uri 'none'; object-src 'none'; form-action 'self';"
          + " frame-ancestors 'none'";

  @Bean
  AccessPolicy accessPolicy(ServerProperties server, AccessProperties properties) {
    return AccessPolicy.of(server.getAddress(), properties);
  }

  @Bean
  SecurityFilterChain everyRequest(
      HttpSecurity http,
      AccessPolicy policy,
      AccessProperties properties,
      LimitProperties limits,
      Clock clock,
      @Lazy RigKeyRing keys,
      @Lazy GuestBook guests,
      @Lazy @Qualifier("handlerExceptionResolver") HandlerExceptionResolver problems)
      throws Exception {
    http.headers(SecurityConfiguration::harden)
        .requestCache(AbstractHttpConfigurer::disable)
        .addFilterAfter(new RequestGuard(policy, problems), HeaderWriterFilter.class)
        .addFilterAfter(new RequestRate(limits.perMinute(), problems), RequestGuard.class)
        .addFilterAfter(new BodyLimit(limits.body().toBytes(), problems), AuthorizationFilter.class)
        .addFilterAfter(
            new HeavyWork(limits.atOnce(), limits.patience(), problems), BodyLimit.class);
    if (policy.login()) {
      askForLogin(http, properties, clock, keys, guests, problems);
    } else {
      http.csrf(AbstractHttpConfigurer::disable) // the guard sees to it, and there is no session
          .sessionManagement(s -> s.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
          .logout(AbstractHttpConfigurer::disable)
          .addFilterBefore(new AtHomeFilter(), AnonymousAuthenticationFilter.class)
          .authorizeHttpRequests(requests -> requests.anyRequest().permitAll());
    }
    return http.build();
  }

  private static void askForLogin(
      HttpSecurity http,
      AccessProperties properties,
      Clock clock,
      RigKeyRing keys,
      GuestBook guests,
      HandlerExceptionResolver problems)
      throws Exception {
    Attempts attempts = new Attempts(clock);
    AuthenticationEntryPoint askForPassword = askForPassword(attempts, problems);
    http.httpBasic(basic -> basic.authenticationEntryPoint(askForPassword))
        .formLogin(
            form ->
                form.loginPage(AccessRules.LOGIN)
                    .successHandler(SecurityConfiguration::leadBack)
                    .failureHandler(
                        (request, response, failure) -> {
                          attempts.failed(request.getRemoteAddr());
                          Browser.lead(
                              response,
                              Browser.loginFor(
                                  request.getParameter(Browser.WAY_BACK), "&refused=yes"));
                        }))
        .logout(
            out ->
                out.logoutRequestMatcher(
                        request ->
                            request.getMethod().equals("POST")
                                && request.getRequestURI().equals(AccessRules.LOGOUT))
                    .logoutSuccessHandler(
                        (request, response, authentication) ->
                            Browser.lead(response, AccessRules.LOGIN + "?left=yes")))
        .csrf(csrf -> csrf.spa().csrfTokenRepository(pageTokens()))
        .csrf(csrf -> csrf.requireCsrfProtectionMatcher(SecurityConfiguration::needsPageToken))
        .addFilterBefore(
            new LoginAge(properties.login().longest(), clock), SecurityContextHolderFilter.class)
        .addFilterBefore(new AttemptsFilter(attempts, problems), LogoutFilter.class)
        .addFilterBefore(
            new RigKeyFilter(keys, attempts, problems), BasicAuthenticationFilter.class)
        .addFilterAfter(new GuestFilter(guests), BasicAuthenticationFilter.class)
        .exceptionHandling(
            e -> e.authenticationEntryPoint(askForPassword).accessDeniedHandler(deny(problems)))
        .authorizeHttpRequests(
            requests ->
                requests
                    .dispatcherTypeMatchers(DispatcherType.ERROR, DispatcherType.ASYNC)
                    .permitAll()
                    .anyRequest()
                    .access(SecurityConfiguration::decide));
  }

  /**
   * What a browser's login would send along by itself needs the page's token. A request with a key
   * or a password of its own cannot be made by somebody else's page, and one without a login is
   * refused for that, before a long body is read in search of a token.
   */
  private static boolean needsPageToken(HttpServletRequest request) {
    boolean open = AccessRules.isOpen(request.getMethod(), request.getRequestURI());
    Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
    return !READING.contains(request.getMethod())
        && request.getHeader(HttpHeaders.AUTHORIZATION) == null
        && authentication != null
        && authentication.isAuthenticated()
        && !open;
  }

  /** In a cookie that the page's scripts read, so that a page kept offline has the one of today. */
  private static CookieCsrfTokenRepository pageTokens() {
    CookieCsrfTokenRepository tokens = CookieCsrfTokenRepository.withHttpOnlyFalse();
    tokens.setCookieName("limbspan-page");
    tokens.setHeaderName("X-Page-Token");
    tokens.setCookieCustomizer(cookie -> cookie.sameSite("Strict"));
    return tokens;
  }

  private static void leadBack(
      HttpServletRequest request, HttpServletResponse response, Authentication authentication) {
    Browser.lead(response, Browser.wayBack(request.getParameter(Browser.WAY_BACK)));
  }

  /** Requests are timed whole by the server; each of a dozen filters need not be timed besides. */
  @Bean
  SecurityObservationSettings filtersUntimed() {
    return SecurityObservationSettings.noObservations();
  }

  @Bean
  Doorkeeper doorkeeper(AccessPolicy policy) {
    return () -> Visitor.now(policy.login());
  }

  @Bean
  PasswordEncoder passwordEncoder() {
    return new RememberedPassword(PasswordEncoderFactories.createDelegatingPasswordEncoder());
  }

  @Bean
  UserDetailsService owner(AccessProperties properties, PasswordEncoder encoder) {
    InMemoryUserDetailsManager users = new InMemoryUserDetailsManager();
    String password = properties.ownerPassword();
    if (password != null) {
      String encoded = password.startsWith("{") ? password : encoder.encode(password);
      users.createUser(User.withUsername(OWNER).password(encoded).roles("OWNER").build());
    }
    return users;
  }

  private static void harden(HeadersConfigurer<HttpSecurity> headers) {
    headers
        .contentSecurityPolicy(csp -> csp.policyDirectives(CONTENT_SECURITY_POLICY))
        .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
        .crossOriginOpenerPolicy(c -> c.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
        .crossOriginResourcePolicy(c -> c.policy(CrossOriginResourcePolicy.SAME_ORIGIN))
        .permissionsPolicyHeader(
            p -> p.policy("camera=(), microphone=(), geolocation=(self), payment=()"));
  }

  private static AuthorizationResult decide(
      Supplier<? extends @Nullable Authentication> authentication,
      RequestAuthorizationContext context) {
    String method = context.getRequest().getMethod();
    String path = context.getRequest().getRequestURI();
    return new AuthorizationDecision(
        AccessRules.isOpen(method, path) || isAllowed(authentication.get(), method, path));
  }

  private static boolean isAllowed(
      @Nullable Authentication authentication, String method, String path) {
    if (authentication == null) {
      return false;
    }
    List<String> roles =
        authentication.getAuthorities().stream().map(each -> each.getAuthority()).toList();
    return roles.contains(AccessRules.OWNER)
        || (roles.contains(AccessRules.RIG)
            && AccessRules.mayRig(authentication.getName(), method, path))
        || (roles.contains(AccessRules.GUEST)
            && AccessRules.mayGuest(authentication.getName(), method, path));
  }

  private static AccessDeniedHandler deny(HandlerExceptionResolver problems) {
    return (request, response, failure) ->
        problems.resolveException(
            request,
            response,
            null,
            Refused.forbidden(
                failure instanceof CsrfException
                    ? "The page is older than the login: load it again and send it once more."
                    : "A guest looks at the ledger of one rig. A rig key sends readings, photographs and calibrations of its own rig; for all"
                        + " else the owner's password is needed.",
                List.of()));
  }

  private static AuthenticationEntryPoint askForPassword(
      Attempts attempts, HandlerExceptionResolver problems) {
    return (request, response, failure) -> {
      if (request.getHeader(HttpHeaders.AUTHORIZATION) != null) {
        attempts.failed(request.getRemoteAddr());
      } else if (Browser.opensPage(request)) {
        Browser.lead(response, Browser.loginFor(request));
        return;
      }
      response.setHeader(
          HttpHeaders.WWW_AUTHENTICATE,
          Browser.isScript(request) ? "Page realm=\"Limbspan\"" : "Basic realm=\"Limbspan\"");
      problems.resolveException(
          request,
          response,
          null,
          Refused.unauthenticated(
              "This service asks for a login: the user is "
                  + OWNER
                  + ", the password the owner's."));
    };
  }
}
