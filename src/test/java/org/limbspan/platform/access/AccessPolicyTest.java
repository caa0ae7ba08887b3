package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.InetAddress;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.limbspan.platform.StartRefused;

class AccessPolicyTest {

  private static final AccessProperties.Login LOGIN =
      new AccessProperties.Login(Duration.ofHours(12), Duration.ofDays(7));

  private static final String PASSWORD = "correct horse battery";

  private final InetAddress loopback = InetAddress.getLoopbackAddress();

  @Test
  void needsNoLoginOnLoopback() {
    AccessPolicy policy = policy(loopback, null);

    assertThat(policy.login()).isFalse();
    assertThat(policy.hosts()).containsExactlyInAnyOrder("localhost", "127.0.0.1", "[::1]");
  }

  @Test
  void refusesToListenElsewhereWithoutPassword() throws Exception {
    InetAddress elsewhere = InetAddress.getByAddress(new byte[] {0, 0, 0, 0});

    assertThatThrownBy(() -> policy(elsewhere, null))
        .isInstanceOf(StartRefused.class)
        .hasMessageContaining("0.0.0.0");
    assertThatThrownBy(() -> policy(null, " ")).isInstanceOf(StartRefused.class);
  }

  @Test
  void refusesToBeReachedByAnotherNameWithoutPassword() {
    assertThatThrownBy(() -> policy(loopback, null, "moon.example.org"))
        .isInstanceOf(StartRefused.class)
        .hasMessageContaining("moon.example.org");
  }

  @Test
  void refusesAShortPassword() {
    assertThatThrownBy(() -> policy(loopback, "elevenchars"))
        .isInstanceOf(StartRefused.class)
        .hasMessageNotContaining("elevenchars");
  }

  @Test
  void asksForThePasswordWhereverOneIsSet() {
    assertThat(policy(loopback, PASSWORD).login()).isTrue();
    assertThat(policy(null, PASSWORD).login()).isTrue();
  }

  @Test
  void takesAnyHostElsewhereUnlessNamesAreGiven() {
    assertThat(policy(null, PASSWORD).allowsHost("attic.local")).isTrue();

    AccessPolicy named = policy(null, PASSWORD, "Moon.Example.org");
    assertThat(named.allowsHost("moon.example.ORG")).isTrue();
    assertThat(named.allowsHost("localhost")).isTrue();
    assertThat(named.allowsHost("attic.local")).isFalse();
  }

  private static AccessPolicy policy(
      @Nullable InetAddress address, @Nullable String password, String... hosts) {
    return AccessPolicy.of(
        address, new AccessProperties(password, List.of(hosts), List.of(), LOGIN));
  }
}
