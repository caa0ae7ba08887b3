package org.limbspan.platform;

import java.util.List;

/**
 * A request that cannot be met, with the reason in words for the client. Answered as {@code
 * application/problem+json} (RFC 9457).
 */
public abstract sealed class Problem extends RuntimeException
    permits InvalidInput, Refused, NotFound, Conflict, TooLarge, Unavailable {

  private static final long serialVersionUID = 1L;

  /** What kind of problem it is; decides the HTTP status. */
  public enum Category {
    /** The request itself cannot be read or names parameters that make no sense: 400. */
    MALFORMED("Request not understood"),
    UNAUTHENTICATED("Login needed"),
    FORBIDDEN("Not allowed"),
    NOT_FOUND("Not found"),
    CONFLICT("In conflict with what is held"),
    TOO_LARGE("Too large"),
    /** The content was read, and some of its values cannot be taken: 422. */
    INVALID_CONTENT("Values not accepted"),
    UNAVAILABLE("Not available just now");

    private final String title;

    Category(String title) {
      this.title = title;
    }

    String title() {
      return title;
    }
  }

  private final Category category;
  private final transient List<Violation> violations;

  Problem(Category category, String detail, List<Violation> violations) {
    super(detail);
    this.category = category;
    this.violations = List.copyOf(violations);
  }

  public Category category() {
    return category;
  }

  public List<Violation> violations() {
    return violations;
  }

  /** The message in words, never null. */
  public String detail() {
    return String.valueOf(getMessage());
  }
}
