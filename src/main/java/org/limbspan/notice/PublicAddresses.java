package org.limbspan.notice;

import java.math.BigInteger;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.List;

/**
 * Which addresses are those of the public internet, so that a webhook cannot be made to knock at
 * doors within the house.
 *
 * <p>Source: IANA IPv4 and IPv6 Special-Purpose Address Registries (RFC 6890): blocks that are not
 * globally reachable, with multicast (RFC 5771, RFC 4291) and the reserved class E. Of IPv6 only
 * 2000::/3 is given out. Addresses that carry one of IPv4 (RFC 6052, RFC 3056) count as that one.
 */
final class PublicAddresses {

  private static final List<Block> CLOSED =
      Block.list(
          "0.0.0.0/8", // this network
          "10.0.0.0/8", // private, RFC 1918
          "100.64.0.0/10", // shared by a provider's customers, RFC 6598
          "127.0.0.0/8", // loopback
          "169.254.0.0/16", // link-local
          "172.16.0.0/12", // private
          "192.0.0.0/24", // protocol assignments
          "192.0.2.0/24", // documentation
          "192.88.99.0/24", // former relays of 6to4
          "192.168.0.0/16", // private
          "198.18.0.0/15", // benchmarks
          "198.51.100.0/24", // documentation
          "203.0.113.0/24", // documentation
          "224.0.0.0/4", // multicast
          "240.0.0.0/4", // reserved, broadcast
          "2001::/23", // protocol assignments, Teredo
          "2001:db8::/32", // documentation
          "3fff::/20"); // documentation

  private static final Block GLOBAL_UNICAST = Block.of("2000::/3");
  private static final Block NAT64 = Block.of("64:ff9b::/96");
  private static final Block SIX_TO_FOUR = Block.of("2002::/16");

  private PublicAddresses() {}

  static boolean isPublic(InetAddress address) {
    byte[] bytes = address.getAddress();
    if (address instanceof Inet6Address) {
      if (NAT64.holds(bytes)) {
        return isPublic(fourOf(bytes, 12));
      }
      if (SIX_TO_FOUR.holds(bytes)) {
        return isPublic(fourOf(bytes, 2));
      }
      if (!GLOBAL_UNICAST.holds(bytes)) {
        return false;
      }
    }
    return CLOSED.stream().noneMatch(block -> block.holds(bytes));
  }

  private static InetAddress fourOf(byte[] bytes, int from) {
    return Block.address(Arrays.copyOfRange(bytes, from, from + 4));
  }

  /** Addresses that begin with the same bits. */
  private record Block(BigInteger start, int length, int bits) {

    static List<Block> list(String... blocks) {
      return Arrays.stream(blocks).map(Block::of).toList();
    }

    static Block of(String block) {
      int slash = block.indexOf('/');
      byte[] start = literal(block.substring(0, slash));
      return new Block(
          new BigInteger(1, start), start.length, Integer.parseInt(block.substring(slash + 1)));
    }

    boolean holds(byte[] address) {
      int rest = Byte.SIZE * length - bits;
      return address.length == length
          && new BigInteger(1, address).shiftRight(rest).equals(start.shiftRight(rest));
    }

    static InetAddress address(byte[] bytes) {
      try {
        return InetAddress.getByAddress(bytes);
      } catch (UnknownHostException e) {
        throw new IllegalStateException("four or sixteen bytes are an address", e);
      }
    }

    private static byte[] literal(String text) {
      try {
        return InetAddress.getByName(text).getAddress();
      } catch (UnknownHostException e) {
        throw new IllegalStateException(text + " is an address", e);
      }
    }
  }
}
