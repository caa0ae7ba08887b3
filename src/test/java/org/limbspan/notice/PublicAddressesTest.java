package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Blocks: IANA IPv4 and IPv6 Special-Purpose Address Registries (RFC 6890), RFC 5771, RFC 4291. */
class PublicAddressesTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0.0.0.0",
        "0.1.2.3",
        "10.0.0.1",
        "10.255.255.255",
        "100.64.0.0",
        "100.127.255.255",
        "127.0.0.1",
        "127.200.1.1",
        "169.254.169.254",
        "172.16.0.1",
        "172.31.255.255",
        "192.0.0.8",
        "192.0.2.1",
        "192.88.99.1",
        "192.168.1.1",
        "198.18.0.1",
        "198.19.255.255",
        "198.51.100.7",
        "203.0.113.7",
        "224.0.0.1",
        "239.255.255.255",
        "240.0.0.1",
        "255.255.255.255",
        "2130706433"
      })
  void areNotThoseOfTheHouseInIpv4(String address) throws UnknownHostException {
    assertThat(PublicAddresses.isPublic(InetAddress.getByName(address))).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "::", "::1", "::ffff:127.0.0.1", "::ffff:10.1.2.3", "::127.0.0.1", "64:ff9b::7f00:1",
        "64:ff9b::a9fe:a9fe", "64:ff9b:1::1", "100::1", "2001::1", "2001:db8::1", "2002:7f00:1::1",
        "2002:c0a8:101::1", "3fff::1", "5f00::1", "fc00::1", "fd12:3456:789a::1", "fe80::1",
        "febf::1", "fec0::1", "ff02::1", "ff0e::1", "4000::1"
      })
  void areNotThoseOfTheHouseInIpv6(String address) throws UnknownHostException {
    assertThat(PublicAddresses.isPublic(InetAddress.getByName(address))).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1.1.1.1",
        "8.8.8.8",
        "9.255.255.255",
        "11.0.0.0",
        "100.63.255.255",
        "100.128.0.0",
        "172.15.255.255",
        "172.32.0.0",
        "192.167.255.255",
        "192.169.0.0",
        "198.17.255.255",
        "198.20.0.0",
        "223.255.255.255",
        "2606:4700:4700::1111",
        "2a00:1450::1",
        "::ffff:8.8.8.8",
        "64:ff9b::808:808",
        "2002:808:808::1"
      })
  void areAllOthers(String address) throws UnknownHostException {
    assertThat(PublicAddresses.isPublic(InetAddress.getByName(address))).isTrue();
  }

  /** The Java platform makes IPv4 of these sixteen bytes itself; that it does is held here. */
  @Test
  void seeThroughIpv4WrittenAsIpv6() throws UnknownHostException {
    byte[] mapped = HexFormat.of().parseHex("00000000000000000000ffff7f000001");
    assertThat(PublicAddresses.isPublic(InetAddress.getByAddress(mapped))).isFalse();
  }
}
