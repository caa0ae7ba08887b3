package org.limbspan.platform.reads;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/**
 * The primary, whose commits are counted: where the connection is told to, or, where each statement
 * commits by itself, when it is given back.
 */
final class CountedWrites extends DelegatingDataSource {

  private final Writes writes;

  CountedWrites(DataSource primary, Writes writes) {
    super(primary);
    this.writes = writes;
  }

  @Override
  public Connection getConnection() throws SQLException {
    Connection connection = obtainTargetDataSource().getConnection();
    return (Connection)
        Proxy.newProxyInstance(
            CountedWrites.class.getClassLoader(),
            new Class<?>[] {Connection.class},
            new Counting(connection, writes));
  }

  private static final class Counting implements InvocationHandler {

    private final Connection connection;
    private final Writes writes;

    /** Whether anything can have been written that was not counted. */
    private boolean used;

    Counting(Connection connection, Writes writes) {
      this.connection = connection;
      this.writes = writes;
    }

    @Override
    public @Nullable Object invoke(Object proxy, Method method, Object @Nullable [] arguments)
        throws Throwable {
      String name = method.getName();
      if (name.equals("equals") && arguments != null) {
        return proxy == arguments[0];
      }
      used |= name.startsWith("prepare") || name.startsWith("create") || name.equals("unwrap");
      try {
        return method.invoke(connection, arguments);
      } catch (InvocationTargetException e) {
        throw e.getTargetException();
      } finally {
        afterwards(name);
      }
    }

    /** Also where it failed: a commit whose answer was lost may have come to pass. */
    private void afterwards(String name) {
      if (used && (name.equals("commit") || name.equals("close") || name.equals("abort"))) {
        used = false;
        writes.add();
      } else if (name.equals("rollback")) {
        used = false;
      }
    }
  }
}
