package org.limbspan.platform;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;

/** The body of an answer that tells a problem, in one shape for all of them. */
final class ProblemBody {

  private ProblemBody() {}

  static ProblemDetail of(Problem problem) {
    return of(
        status(problem.category()),
        problem.category().title(),
        problem.detail(),
        problem.violations());
  }

  static ProblemDetail of(
      HttpStatusCode status, String title, String detail, List<Violation> violations) {
    ProblemDetail body = ProblemDetail.forStatusAndDetail(status, detail);
    body.setTitle(title);
    body.setProperty("violations", violations);
    return body;
  }

  /** Says which request it was, under the same id as the header and the log. */
  static void label(ProblemDetail body, HttpServletRequest request) {
    String id = RequestLabel.of(request);
    if (id != null) {
      body.setProperty("request", id);
    }
  }

  static HttpStatus status(Problem.Category category) {
    return switch (category) {
      case MALFORMED -> HttpStatus.BAD_REQUEST;
      case UNAUTHENTICATED -> HttpStatus.UNAUTHORIZED;
      case FORBIDDEN -> HttpStatus.FORBIDDEN;
      case NOT_FOUND -> HttpStatus.NOT_FOUND;
      case CONFLICT -> HttpStatus.CONFLICT;
      case TOO_LARGE -> HttpStatus.CONTENT_TOO_LARGE;
      case TOO_MANY -> HttpStatus.TOO_MANY_REQUESTS;
      case INVALID_CONTENT -> HttpStatus.UNPROCESSABLE_CONTENT;
      case UNAVAILABLE -> HttpStatus.SERVICE_UNAVAILABLE;
    };
  }
}
