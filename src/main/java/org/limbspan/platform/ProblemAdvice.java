package org.limbspan.platform;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.ConstraintViolationException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.TypeMismatchException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.validation.FieldError;
import org.springframework.web.ErrorResponse;
import org.springframework.web.HttpMediaTypeNotSupportedException;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.method.annotation.HandlerMethodValidationException;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;
import org.springframework.web.servlet.resource.NoResourceFoundException;

/** Maps everything that can go wrong in a request to one shape, in one place. */
@RestControllerAdvice
class ProblemAdvice extends ResponseEntityExceptionHandler {

  private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);

  @ExceptionHandler
  @Nullable ResponseEntity<Object> handle(Problem problem, WebRequest request) {
    return answer(problem, request);
  }

  @ExceptionHandler
  @Nullable ResponseEntity<Object> handle(
      ConstraintViolationException invalid, WebRequest request) {
    List<Violation> violations =
        invalid.getConstraintViolations().stream()
            .map(
                v ->
                    new Violation(
                        v.getPropertyPath().toString(), v.getInvalidValue(), v.getMessage()))
            .toList();
    return answer(InvalidInput.inBody(violations), request);
  }

  @ExceptionHandler
  @Nullable ResponseEntity<Object> handle(DuplicateKeyException held, WebRequest request) {
    LOG.info("a request was refused: {}", held.getMostSpecificCause().getMessage());
    return answer(
        new Conflict("The ledger already holds this under the same key.", List.of()), request);
  }

  /** What broke after the answer had begun is thrown on, so that the client sees it cut off. */
  @ExceptionHandler
  @Nullable ResponseEntity<Object> handleAnythingElse(Exception thrown, WebRequest request)
      throws Exception {
    HttpServletResponse response = ((ServletWebRequest) request).getResponse();
    if (response != null && response.isCommitted()) {
      throw thrown;
    }
    return DatabaseTrouble.in(thrown)
        .map(trouble -> tell(trouble, thrown, request))
        .orElseGet(() -> tellUnexpected(thrown, request));
  }

  private @Nullable ResponseEntity<Object> tell(
      DatabaseTrouble trouble, Exception thrown, WebRequest request) {
    LOG.warn("{}: {}", trouble, thrown.toString());
    HttpHeaders headers = new HttpHeaders();
    headers.set(HttpHeaders.RETRY_AFTER, Integer.toString(trouble.retryAfterS()));
    ProblemDetail body = ProblemBody.of(new Unavailable(trouble.detail()));
    return respond(body, headers, HttpStatus.SERVICE_UNAVAILABLE, request);
  }

  private @Nullable ResponseEntity<Object> tellUnexpected(Exception thrown, WebRequest request) {
    String id = RequestLabel.of(((ServletWebRequest) request).getRequest());
    LOG.error("unexpected, told to the client as {}", id, thrown);
    ProblemDetail body =
        ProblemBody.of(
            HttpStatus.INTERNAL_SERVER_ERROR,
            "Unexpected",
            "The service failed on this request; its log says more under " + id + ".",
            List.of());
    return respond(body, new HttpHeaders(), HttpStatus.INTERNAL_SERVER_ERROR, request);
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleHttpMessageNotReadable(
      HttpMessageNotReadableException unreadable,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    return answer(UnreadableJson.explain(unreadable.getCause()), request);
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleMethodArgumentNotValid(
      MethodArgumentNotValidException invalid,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    List<Violation> violations =
        invalid.getFieldErrors().stream().map(ProblemAdvice::violation).toList();
    return answer(InvalidInput.inBody(violations), request);
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleHandlerMethodValidationException(
      HandlerMethodValidationException invalid,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    List<Violation> violations =
        invalid.getParameterValidationResults().stream()
            .flatMap(
                result ->
                    result.getResolvableErrors().stream()
                        .map(
                            error ->
                                new Violation(
                                    String.valueOf(result.getMethodParameter().getParameterName()),
                                    result.getArgument(),
                                    String.valueOf(error.getDefaultMessage()))))
            .toList();
    return answer(
        InvalidInput.unreadable("A parameter of the request is out of range.", violations),
        request);
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleMissingServletRequestParameter(
      MissingServletRequestParameterException missing,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    return answer(InvalidInput.inQuery(missing.getParameterName(), null, "a value"), request);
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleTypeMismatch(
      TypeMismatchException mismatch,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    String name = mismatch.getPropertyName() == null ? "parameter" : mismatch.getPropertyName();
    return answer(
        InvalidInput.inQuery(
            name, mismatch.getValue(), ExpectedValue.of(mismatch.getRequiredType())),
        request);
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleHttpMediaTypeNotSupported(
      HttpMediaTypeNotSupportedException refused,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    Violation violation =
        new Violation(
            HttpHeaders.CONTENT_TYPE,
            refused.getContentType(),
            MediaType.toString(refused.getSupportedMediaTypes()));
    ProblemDetail body =
        ProblemBody.of(
            status,
            "Kind of content not taken",
            "The content is of a kind that is not taken here.",
            List.of(violation));
    return respond(body, headers, status, request);
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleNoResourceFoundException(
      NoResourceFoundException missing,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    String path = ((ServletWebRequest) request).getRequest().getRequestURI();
    return answer(new NotFound("page or resource", "path", path), request);
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleMaxUploadSizeExceededException(
      MaxUploadSizeExceededException large,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    return answer(new TooLarge("More was sent than is taken in one request."), request);
  }

  private static @Nullable ResponseEntity<Object> answer(Problem problem, WebRequest request) {
    ProblemDetail body = ProblemBody.of(problem);
    return respond(body, new HttpHeaders(), ProblemBody.status(problem.category()), request);
  }

  private static Violation violation(FieldError error) {
    return new Violation(
        error.getField(), error.getRejectedValue(), String.valueOf(error.getDefaultMessage()));
  }

  @Override
  protected @Nullable ResponseEntity<Object> handleExceptionInternal(
      Exception thrown,
      @Nullable Object body,
      HttpHeaders headers,
      HttpStatusCode status,
      WebRequest request) {
    ProblemDetail problem =
        thrown instanceof ErrorResponse told
            ? told.updateAndGetBody(getMessageSource(), request.getLocale())
            : ProblemDetail.forStatus(status);
    return respond(problem, headers, status, request);
  }

  /** A page gets its error page; everybody else the problem itself. */
  private static @Nullable ResponseEntity<Object> respond(
      ProblemDetail body, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
    HttpServletResponse response = ((ServletWebRequest) request).getResponse();
    HttpServletRequest servletRequest = ((ServletWebRequest) request).getRequest();
    if (response == null || response.isCommitted()) {
      return null;
    }
    if (ErrorPage.isWanted(servletRequest)) {
      ErrorPage.send(servletRequest, response, body, status);
      return null;
    }
    if (body.getProperties() == null) {
      body.setProperty("violations", List.of());
    }
    ProblemBody.label(body, servletRequest);
    return ResponseEntity.status(status)
        .headers(headers)
        .contentType(MediaType.APPLICATION_PROBLEM_JSON)
        .body(body);
  }
}
