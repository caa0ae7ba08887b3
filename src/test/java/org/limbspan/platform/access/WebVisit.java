package org.limbspan.platform.access;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/** A browser without a screen: keeps cookies, follows nothing. */
final class WebVisit {

  static final String LOGIN = "limbspan-login";
  static final String PAGE = "limbspan-page";

  private final HttpClient client = HttpClient.newHttpClient();
  private final int port;
  private final Map<String, String> cookies = new LinkedHashMap<>();

  WebVisit(int port) {
    this.port = port;
  }

  Map<String, String> cookies() {
    return cookies;
  }

  String cookie(String name) {
    return Objects.requireNonNull(cookies.get(name), name);
  }

  HttpResponse<String> page(String path, String... headers) {
    HttpRequest.Builder request = at(path).GET().header("Accept", "text/html,*/*");
    for (int i = 0; i < headers.length; i += 2) {
      request.header(headers[i], headers[i + 1]);
    }
    return send(request);
  }

  HttpResponse<String> logIn(String password, String to, String... headers) {
    HttpRequest.Builder request =
        at("/login")
            .header("Content-Type", "application/x-www-form-urlencoded")
            .header("Accept", "text/html")
            .POST(
                HttpRequest.BodyPublishers.ofString(
                    "username=owner&password=" + encoded(password) + "&to=" + encoded(to)));
    for (int i = 0; i < headers.length; i += 2) {
      request.header(headers[i], headers[i + 1]);
    }
    return send(request);
  }

  HttpResponse<String> post(String path, String type, String body, String... headers) {
    HttpRequest.Builder request =
        at(path).header("Content-Type", type).POST(HttpRequest.BodyPublishers.ofString(body));
    for (int i = 0; i < headers.length; i += 2) {
      request.header(headers[i], headers[i + 1]);
    }
    return send(request);
  }

  static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private HttpRequest.Builder at(String path) {
    return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path));
  }

  private HttpResponse<String> send(HttpRequest.Builder request) {
    if (!cookies.isEmpty()) {
      request.header(
          "Cookie",
          cookies.entrySet().stream()
              .map(cookie -> cookie.getKey() + "=" + cookie.getValue())
              .collect(Collectors.joining("; ")));
    }
    try {
      HttpResponse<String> answer =
          client.send(request.build(), HttpResponse.BodyHandlers.ofString());
      keep(answer.headers().allValues("Set-Cookie"));
      return answer;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  private void keep(List<String> set) {
    for (String cookie : set) {
      String[] pair = cookie.split(";", 2)[0].split("=", 2);
      if (pair[1].isEmpty() || cookie.contains("Max-Age=0")) {
        cookies.remove(pair[0]);
      } else {
        cookies.put(pair[0], pair[1]);
      }
    }
  }
}
