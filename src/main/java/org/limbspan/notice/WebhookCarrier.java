package org.limbspan.notice;

import java.io.IOException;
import java.net.ConnectException;
import java.net.UnknownHostException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.util.function.SingletonSupplier;

/**
 * Posts notices to webhooks. Neither redirects nor proxies are followed: both would lead to hosts
 * that were not looked at.
 *
 * <p>The host's addresses are looked up and checked directly before each attempt. The client looks
 * them up itself when it connects and gets the very ones that were checked from the cache of the
 * Java platform, which keeps them for 30 seconds (security property {@code
 * networkaddress.cache.ttl}): within that time a name cannot change its meaning.
 */
@Component
class WebhookCarrier implements Carrier {

  private final NoticeProperties properties;
  private final Clock clock;
  private final Supplier<HttpClient> client;

  WebhookCarrier(NoticeProperties properties, Clock clock) {
    this.properties = properties;
    this.clock = clock;
    this.client = SingletonSupplier.of(this::newClient);
  }

  /** Not before it is needed: its thread looks round every three seconds for ever. */
  private HttpClient newClient() {
    return HttpClient.newBuilder()
        .version(HttpClient.Version.HTTP_1_1)
        .followRedirects(HttpClient.Redirect.NEVER)
        .proxy(HttpClient.Builder.NO_PROXY)
        .connectTimeout(properties.timeout())
        .build();
  }

  @Override
  public Channel channel() {
    return Channel.WEBHOOK;
  }

  @Override
  public void carry(Notice notice, Recipient recipient, String secret) throws Undelivered {
    WebhookAddress address =
        WebhookAddress.of(recipient.address())
            .orElseThrow(() -> new Undelivered("expected " + WebhookAddress.EXPECTED));
    requirePublic(address);
    int status = send(request(address, notice, secret));
    if (status / 100 == 3) {
      throw new Undelivered("answered " + status + "; redirects are not followed");
    }
    if (status / 100 != 2) {
      throw new Undelivered("answered " + status);
    }
  }

  private void requirePublic(WebhookAddress address) throws Undelivered {
    try {
      if (!properties.privateAddresses() && !address.isPublic()) {
        throw new Undelivered(
            "the host has an address within the house; expected " + WebhookAddress.EXPECTED_PUBLIC);
      }
    } catch (UnknownHostException unknown) {
      throw new Undelivered("no address is known of the host", unknown);
    }
  }

  private HttpRequest request(WebhookAddress address, Notice notice, String secret) {
    long timestampS = clock.instant().getEpochSecond();
    return HttpRequest.newBuilder(address.uri())
        .header(HttpHeaders.CONTENT_TYPE, MediaType.APPLICATION_JSON_VALUE)
        .header(HttpHeaders.USER_AGENT, "Limbspan")
        .header("Limbspan-Notice", notice.id().toString())
        .header("Limbspan-Timestamp", Long.toString(timestampS))
        .header("Limbspan-Signature", Signature.of(secret, timestampS, notice.document()))
        .POST(HttpRequest.BodyPublishers.ofString(notice.document(), StandardCharsets.UTF_8))
        .build();
  }

  /** The status of the answer; its body is not kept, however long it is. */
  private int send(HttpRequest request) throws Undelivered {
    Duration timeout = properties.timeout();
    CompletableFuture<HttpResponse<Void>> answer =
        client.get().sendAsync(request, HttpResponse.BodyHandlers.discarding());
    try {
      return answer.get(timeout.toMillis(), TimeUnit.MILLISECONDS).statusCode();
    } catch (TimeoutException late) {
      answer.cancel(true);
      throw new Undelivered("no answer within " + timeout.toSeconds() + " s", late);
    } catch (InterruptedException stopped) {
      answer.cancel(true);
      Thread.currentThread().interrupt();
      throw new Undelivered("the service stopped meanwhile", stopped);
    } catch (ExecutionException failed) {
      throw new Undelivered(words(failed), failed);
    }
  }

  private static String words(ExecutionException failed) {
    if (!(failed.getCause() instanceof IOException broken)) {
      throw new IllegalStateException("unexpected from the HTTP client", failed);
    }
    if (broken instanceof ConnectException) {
      return "no connection could be made";
    }
    String name = broken.getClass().getSimpleName();
    String message = broken.getMessage();
    return "no answer: " + (message == null || message.isBlank() ? name : name + ", " + message);
  }
}
