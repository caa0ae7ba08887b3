package org.limbspan.platform.access;

import jakarta.servlet.DispatcherType;
import org.limbspan.platform.Refused;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.web.server.autoconfigure.ServerProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Lazy;
import org.springframework.http.HttpHeaders;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.userdetails.User;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.provisioning.InMemoryUserDetailsManager;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.web.servlet.HandlerExceptionResolver;

/** One chain for every request: headers, guard, and the owner's password where it is needed. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(AccessProperties.class)
class SecurityConfiguration {

  private static final String OWNER = "owner";

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
      @Lazy @Qualifier("handlerExceptionResolver") HandlerExceptionResolver problems)
      throws Exception {
    http.csrf(AbstractHttpConfigurer::disable) // the guard sees to it, and there is no session
        .sessionManagement(s -> s.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
        .headers(SecurityConfiguration::harden)
        .logout(AbstractHttpConfigurer::disable)
        .requestCache(AbstractHttpConfigurer::disable)
        .addFilterAfter(new RequestGuard(policy, problems), HeaderWriterFilter.class);
    if (policy.login()) {
      AuthenticationEntryPoint askForPassword = askForPassword(problems);
      http.httpBasic(basic -> basic.authenticationEntryPoint(askForPassword))
          .exceptionHandling(e -> e.authenticationEntryPoint(askForPassword))
          .authorizeHttpRequests(
              requests ->
                  requests
                      .dispatcherTypeMatchers(DispatcherType.ERROR, DispatcherType.ASYNC)
                      .permitAll()
                      .requestMatchers("/actuator/health", "/actuator/health/**")
                      .permitAll()
                      .anyRequest()
                      .authenticated());
    } else {
      http.authorizeHttpRequests(requests -> requests.anyRequest().permitAll());
    }
    return http.build();
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

  private static AuthenticationEntryPoint askForPassword(HandlerExceptionResolver problems) {
    return (request, response, failure) -> {
      response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Basic realm=\"Limbspan\"");
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
