package org.limbspan.platform;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;

/**
 * The last stop of a request that failed: the view {@code error} for a browser, with the model
 * {@code status}, {@code title} and {@code detail}; a problem for everybody else.
 */
@Controller
@RequestMapping("${spring.web.error.path:/error}")
class ErrorPage implements ErrorController {

  private static final String PROBLEM = ErrorPage.class.getName() + ".problem";

  /** Whether the client is a browser that asked for a page. */
  static boolean isWanted(HttpServletRequest request) {
    String accept = request.getHeader(HttpHeaders.ACCEPT);
    String path = request.getRequestURI();
    return accept != null
        && accept.contains(MediaType.TEXT_HTML_VALUE)
        && !path.startsWith("/api/")
        && !path.startsWith("/actuator/");
  }

  static void send(
      HttpServletRequest request,
      HttpServletResponse response,
      ProblemDetail problem,
      HttpStatusCode status) {
    request.setAttribute(PROBLEM, problem);
    try {
      response.sendError(status.value());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @RequestMapping(produces = MediaType.TEXT_HTML_VALUE)
  ModelAndView page(HttpServletRequest request) {
    ProblemDetail problem = problem(request);
    ModelAndView page = new ModelAndView("error", HttpStatus.valueOf(problem.getStatus()));
    page.addObject("status", problem.getStatus());
    page.addObject("title", problem.getTitle());
    page.addObject("detail", problem.getDetail());
    return page;
  }

  @RequestMapping
  ResponseEntity<ProblemDetail> problemOf(HttpServletRequest request) {
    ProblemDetail problem = problem(request);
    ProblemBody.label(problem, request);
    return ResponseEntity.status(problem.getStatus())
        .contentType(MediaType.APPLICATION_PROBLEM_JSON)
        .body(problem);
  }

  private static ProblemDetail problem(HttpServletRequest request) {
    if (request.getAttribute(PROBLEM) instanceof ProblemDetail told) {
      return told;
    }
    Object code = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE);
    HttpStatus status = code instanceof Integer number ? HttpStatus.resolve(number) : null;
    if (status == null) {
      status = HttpStatus.NOT_FOUND;
    }
    return ProblemBody.of(
        status, status.getReasonPhrase(), "The request could not be answered.", List.of());
  }
}
