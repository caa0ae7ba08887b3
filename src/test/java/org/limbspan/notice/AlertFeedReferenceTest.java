package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import com.rometools.rome.feed.atom.Entry;
import com.rometools.rome.feed.atom.Feed;
import com.rometools.rome.io.WireFeedInput;
import java.io.StringReader;
import java.net.URI;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Site;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AlertReply;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** The feed beside what RFC 4287 demands, and read back by the library that writes it. */
class AlertFeedReferenceTest {

  private static final String ATOM = "http://www.w3.org/2005/Atom";
  private static final Instant CREATED = Instant.parse("2025-01-01T00:00:00Z");
  private static final Instant LATER = Instant.parse("2026-06-01T10:00:00Z");

  @Test
  void hasWhatTheStandardDemands() throws Exception {
    Element feed = parse(feed("Garden <1> & \u201ctwo\u201d", alerts(3)));
    assertThat(feed.getLocalName()).isEqualTo("feed");
    assertThat(feed.getNamespaceURI()).isEqualTo(ATOM);
    List<String> ids = new ArrayList<>();
    requireHead(feed, ids);
    assertThat(children(feed, "author")).as("4.1.1: authors").isNotEmpty();
    assertThat(children(children(feed, "author").get(0), "name")).as("3.2.1").hasSize(1);
    assertThat(links(feed, "self")).as("4.1.1: a link to itself, as it should").hasSize(1);
    assertThat(links(feed, "alternate")).hasSize(1);
    List<Element> entries = children(feed, "entry");
    assertThat(entries).hasSize(3);
    for (Element entry : entries) {
      requireHead(entry, ids);
      assertThat(children(entry, "content")).as("4.1.2: at most one").hasSize(1);
      assertThat(links(entry, "alternate")).hasSize(1);
    }
    assertThat(ids).as("4.2.6: ids tell apart").doesNotHaveDuplicates();
  }

  @Test
  void isReadBackAsItWasMeant() throws Exception {
    Feed feed =
        (Feed) new WireFeedInput().build(new StringReader(feed("Garden <1> & two", alerts(3))));
    assertThat(feed.getTitle()).isEqualTo("Remarks on Garden <1> & two");
    assertThat(feed.getUpdated().toInstant()).isEqualTo(InventedAlerts.alert(2).raisedAt());
    assertThat(feed.getEntries())
        .extracting(Entry::getTitle)
        .as("the latest first")
        .containsExactly(
            "Garden <1> & two: Invented step 2.",
            "Garden <1> & two: Invented step 1.",
            "Garden <1> & two: Invented step 0.");
    assertThat(feed.getEntries().get(0).getContents().get(0).getValue())
        .contains("Look at the zoom.");
    assertThat(feed.getEntries().get(0).getAlternateLinks().get(0).getHref())
        .isEqualTo("https://moon.example.org/rigs/feed/alerts");
  }

  @Test
  void keepsTheIdOfAnAlertThatIsSettledAndTellsTheTime() throws Exception {
    Alert raised = InventedAlerts.alert(1);
    Alert settled = settled(raised);
    Element before = children(parse(feed("Garden", List.of(raised))), "entry").get(0);
    Element after = children(parse(feed("Garden", List.of(settled))), "entry").get(0);
    assertThat(text(after, "id")).isEqualTo(text(before, "id"));
    assertThat(text(after, "title")).isEqualTo("Garden: Settled: Invented step 1.");
    assertThat(OffsetDateTime.parse(text(before, "updated")).toInstant())
        .isEqualTo(raised.raisedAt());
    assertThat(OffsetDateTime.parse(text(after, "updated")).toInstant()).isEqualTo(LATER);
  }

  @Test
  void isOneWithoutEntriesWhereNothingWasFound() throws Exception {
    Element feed = parse(feed("Garden", List.of()));
    requireHead(feed, new ArrayList<>());
    assertThat(OffsetDateTime.parse(text(feed, "updated")).toInstant()).isEqualTo(CREATED);
    assertThat(children(feed, "entry")).isEmpty();
  }

  @Test
  void writesNamesThatXmlCannotHold() throws Exception {
    assertThat(text(parse(feed("Garden \uffff", List.of())), "title"))
        .isEqualTo("Remarks on Garden \ufffd");
  }

  /** 4.1.1 and 4.1.2: exactly one id, title and time; 3.3: RFC 3339; 4.2.6: an IRI. */
  private static void requireHead(Element element, List<String> ids) {
    for (String name : List.of("id", "title", "updated")) {
      assertThat(children(element, name)).as(name).hasSize(1);
    }
    URI id = URI.create(text(element, "id"));
    assertThat(id.getScheme()).isEqualTo("urn");
    assertThat(id.getSchemeSpecificPart()).matches("uuid:[0-9a-f-]{36}");
    ids.add(id.toString());
    assertThat(text(element, "updated"))
        .matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?(Z|[+-]\\d\\d:\\d\\d)");
  }

  private static String feed(String name, List<Alert> alerts) {
    Rig rig =
        new Rig(
            1, "feed", name, new Site(48.2, 16.4, 170), ZoneId.of("Europe/Vienna"), null, CREATED);
    return new AlertFeed(rig, "https://moon.example.org").write(alerts);
  }

  private static List<Alert> alerts(int count) {
    return IntStream.range(0, count).mapToObj(InventedAlerts::alert).toList();
  }

  private static Alert settled(Alert alert) {
    return new Alert(
        alert.id(),
        alert.kind(),
        "settled",
        alert.setup(),
        alert.onsetAt(),
        alert.onsetFrom(),
        alert.onsetTo(),
        alert.until(),
        alert.raisedAt(),
        LATER,
        alert.evidenceAt(),
        alert.sizePercent(),
        alert.uncertaintyPercent(),
        alert.probability(),
        alert.explanation(),
        alert.words(),
        alert.likelyCauses(),
        alert.readings(),
        List.of(new AlertReply("weather", null, null, null, LATER.minusSeconds(86_400))));
  }

  private static Element parse(String xml) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    return factory
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(xml)))
        .getDocumentElement();
  }

  private static List<Element> children(Element parent, String name) {
    List<Element> found = new ArrayList<>();
    NodeList nodes = parent.getChildNodes();
    for (int i = 0; i < nodes.getLength(); i++) {
      Node node = nodes.item(i);
      if (node instanceof Element element
          && name.equals(element.getLocalName())
          && ATOM.equals(element.getNamespaceURI())) {
        found.add(element);
      }
    }
    return found;
  }

  private static List<Element> links(Element parent, String relation) {
    return children(parent, "link").stream()
        .filter(link -> link.getAttribute("rel").equals(relation))
        .toList();
  }

  private static String text(Element parent, String name) {
    return children(parent, name).get(0).getTextContent();
  }
}
