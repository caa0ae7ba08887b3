package org.limbspan.reading;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Makes the yearly partitions of the readings as they are needed, in a transaction of its own
 * before the readings are written.
 *
 * <p>Two makers are put in a queue by an advisory lock. A partition is made aside and attached:
 * that leaves readers and writers of other partitions alone, where {@code create table ...
 * partition of} would shut them out. Attaching waits for writers of rigs (the foreign key); it must
 * therefore never be called by one, who would wait for himself.
 */
@Component
class ReadingPartitions {

  /** Any number that no other advisory lock of the service uses. */
  private static final long LOCK_KEY = 0x4c494d42_52454144L;

  private static final String LOCK =
      """
      select pg_advisory_xact_lock(:key)
      """;

  /** Asks the catalogue's rows: a name looked up before may be remembered as missing. */
  private static final String EXISTS =
      """
      select exists (
        select from pg_class
        where relname = :name and relispartition
          and relnamespace = (select relnamespace from pg_class where oid = 'reading'::regclass))
      """;

  private static final String CREATE =
      """
      create table reading_%1$d (like reading including all);
      alter table reading attach partition reading_%1$d
        for values from ('%1$d-01-01T00:00:00Z') to ('%2$d-01-01T00:00:00Z');
      """;

  private final JdbcClient jdbc;
  private final TransactionTemplate alone;

  /** Found in the catalogue, and thus committed: nobody takes one away. */
  private final Set<Integer> found = ConcurrentHashMap.newKeySet();

  ReadingPartitions(JdbcClient jdbc, PlatformTransactionManager transactions) {
    this.jdbc = jdbc;
    this.alone = new TransactionTemplate(transactions);
    this.alone.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
  }

  /** Makes sure that readings taken at these instants have a place. */
  void makeFor(Collection<Instant> instants) {
    SortedSet<Integer> years = new TreeSet<>();
    for (Instant instant : instants) {
      years.add(instant.atOffset(ZoneOffset.UTC).getYear());
    }
    years.removeAll(found);
    if (!years.isEmpty()) {
      alone.executeWithoutResult(status -> make(years));
    }
  }

  private void make(SortedSet<Integer> missing) {
    missing.stream().filter(this::exists).forEach(found::add);
    missing.removeAll(found);
    if (missing.isEmpty()) {
      return;
    }
    jdbc.sql(LOCK).param("key", LOCK_KEY).query(rows -> {});
    missing.removeIf(this::exists);
    missing.forEach(year -> jdbc.sql(CREATE.formatted(year, year + 1)).update());
  }

  private boolean exists(int year) {
    return jdbc.sql(EXISTS).param("name", "reading_" + year).query(Boolean.class).single();
  }
}
