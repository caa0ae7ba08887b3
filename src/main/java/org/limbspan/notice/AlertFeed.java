package org.limbspan.notice;

import com.rometools.rome.feed.atom.Content;
import com.rometools.rome.feed.atom.Entry;
import com.rometools.rome.feed.atom.Feed;
import com.rometools.rome.feed.atom.Generator;
import com.rometools.rome.feed.atom.Link;
import com.rometools.rome.feed.atom.Person;
import com.rometools.rome.io.FeedException;
import com.rometools.rome.io.WireFeedOutput;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Date;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.limbspan.rig.Rig;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AlertReply;
import org.limbspan.watch.AlertState;

/**
 * The alerts of a rig as a feed (RFC 4287), the one that changed last first. An entry's id follows
 * from the rig, the alert's kind and when it was raised, which stay as they are while the alert's
 * own id may change; among several of one kind and moment it counts.
 */
final class AlertFeed {

  private final Rig rig;
  private final String pages;

  /**
   * @param pages address under which the pages are reached, without a slash at its end
   */
  AlertFeed(Rig rig, String pages) {
    this.rig = rig;
    this.pages = pages + "/rigs/" + rig.slug();
  }

  /** The feed as its file. */
  String write(List<Alert> alerts) {
    List<Entry> entries = entries(alerts);
    Feed feed = new Feed("atom_1.0");
    feed.setId(urn("feed of alerts of " + rig.slug()));
    feed.setTitle(clean("Remarks on " + rig.name()));
    feed.setUpdated(entries.isEmpty() ? Date.from(rig.createdAt()) : entries.get(0).getUpdated());
    feed.setAuthors(List.of(author()));
    feed.setGenerator(generator());
    feed.setOtherLinks(List.of(link("self", "/alerts.atom", "application/atom+xml")));
    feed.setAlternateLinks(List.of(link("alternate", "/alerts", "text/html")));
    feed.setEntries(entries);
    try {
      return new WireFeedOutput().outputString(feed);
    } catch (FeedException e) {
      throw new IllegalStateException("a feed without what it must have", e);
    }
  }

  private List<Entry> entries(List<Alert> alerts) {
    Map<String, Integer> counts = new HashMap<>();
    List<Entry> entries = new ArrayList<>();
    for (Alert alert : alerts) {
      String name =
          rig.slug() + " " + alert.kind() + " " + alert.raisedAt().truncatedTo(ChronoUnit.MICROS);
      entries.add(entry(alert, name + " " + counts.merge(name, 1, Integer::sum)));
    }
    entries.sort(Comparator.comparing(Entry::getUpdated).reversed());
    return entries;
  }

  private Entry entry(Alert alert, String name) {
    Letter letter = letter(alert);
    Entry entry = new Entry();
    entry.setId(urn(name));
    entry.setTitle(clean(letter.subject()));
    entry.setUpdated(Date.from(updated(alert)));
    entry.setPublished(Date.from(alert.raisedAt()));
    entry.setAlternateLinks(List.of(link("alternate", "/alerts", "text/html")));
    Content content = new Content();
    content.setType(Content.TEXT);
    content.setValue(clean(letter.text()));
    entry.setContents(List.of(content));
    return entry;
  }

  private Letter letter(Alert alert) {
    return alert.state().equals(AlertState.SETTLED.label())
        ? AlertLetters.settled(rig, alert)
        : AlertLetters.raised(rig, alert);
  }

  private static Instant updated(Alert alert) {
    return Stream.concat(
            Stream.of(
                alert.raisedAt(), alert.settledAt() == null ? alert.raisedAt() : alert.settledAt()),
            alert.answers().stream().map(AlertReply::answeredAt))
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }

  private Person author() {
    Person author = new Person();
    author.setName(clean(rig.name()));
    return author;
  }

  private static Generator generator() {
    Generator generator = new Generator();
    generator.setValue("Limbspan");
    return generator;
  }

  private Link link(String relation, String path, String type) {
    Link link = new Link();
    link.setRel(relation);
    link.setHref(pages + path);
    link.setType(type);
    return link;
  }

  /** RFC 4122, in use by RFC 4287, 4.2.6: an id that never changes. */
  private static String urn(String name) {
    return "urn:uuid:" + UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
  }

  /** Without the two code points that XML 1.0 (2.2) has no place for and a name may hold. */
  private static String clean(String text) {
    return text.replaceAll("[\\ufffe\\uffff]", "\ufffd");
  }
}
