package org.limbspan.platform.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.limbspan.platform.TooLarge;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/** Refuses a body that is too long: by what it announces, or once it has come to that. */
final class BodyLimit extends OncePerRequestFilter {

  private final long mostBytes;
  private final HandlerExceptionResolver problems;

  BodyLimit(long mostBytes, HandlerExceptionResolver problems) {
    this.mostBytes = mostBytes;
    this.problems = problems;
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    if (HeavyWork.isPhotographs(request) || HeavyWork.isLedger(request)) {
      chain.doFilter(request, response);
    } else if (request.getContentLengthLong() > mostBytes) {
      problems.resolveException(request, response, null, tooLarge());
    } else {
      chain.doFilter(new Counted(request), response);
    }
  }

  private TooLarge tooLarge() {
    return new TooLarge(
        "The body is longer than %d bytes; send it in parts. See limbspan.limits.body."
            .formatted(mostBytes));
  }

  private final class Counted extends HttpServletRequestWrapper {

    Counted(HttpServletRequest request) {
      super(request);
    }

    @Override
    public ServletInputStream getInputStream() throws IOException {
      return new CountedStream(super.getInputStream());
    }
  }

  private final class CountedStream extends ServletInputStream {

    private final ServletInputStream in;
    private long bytes;

    CountedStream(ServletInputStream in) {
      this.in = in;
    }

    @Override
    public int read() throws IOException {
      int read = in.read();
      count(read < 0 ? 0 : 1);
      return read;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
      int read = in.read(buffer, offset, length);
      count(Math.max(0, read));
      return read;
    }

    private void count(int more) {
      bytes += more;
      if (bytes > mostBytes) {
        throw tooLarge();
      }
    }

    @Override
    public boolean isFinished() {
      return in.isFinished();
    }

    @Override
    public boolean isReady() {
      return in.isReady();
    }

    @Override
    public void setReadListener(ReadListener listener) {
      in.setReadListener(listener);
    }
  }
}
