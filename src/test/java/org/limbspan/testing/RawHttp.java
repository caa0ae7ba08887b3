package org.limbspan.testing;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** HTTP/1.1 as bytes on a socket, for headers that a well-behaved client would not let through. */
public final class RawHttp {

  private final int port;

  public RawHttp(int port) {
    this.port = port;
  }

  /** Sends one request with exactly these header lines and returns the whole answer. */
  public String send(String requestLine, String... headerLines) throws IOException {
    String head =
        requestLine
            + " HTTP/1.1\r\n"
            + String.join("\r\n", headerLines)
            + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n";
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.getOutputStream().write(head.getBytes(StandardCharsets.ISO_8859_1));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /**
   * Sends a body shorter than announced, closes the sending side and returns the whole answer.
   *
   * @param announced the length that the request tells
   */
  public String sendCutShort(String requestLine, String body, int announced, String... headerLines)
      throws IOException {
    String request =
        requestLine
            + " HTTP/1.1\r\n"
            + String.join("\r\n", headerLines)
            + "\r\nContent-Length: "
            + announced
            + "\r\nConnection: close\r\n\r\n"
            + body;
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
      socket.shutdownOutput();
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
