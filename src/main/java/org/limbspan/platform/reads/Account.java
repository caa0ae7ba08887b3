package org.limbspan.platform.reads;

import java.util.Properties;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** With what a server is reached. */
record Account(String url, @Nullable String username, @Nullable String password) {

  static Account ofPrimary(JdbcConnectionDetails primary) {
    return new Account(primary.getJdbcUrl(), primary.getUsername(), primary.getPassword());
  }

  static Account ofStandby(String url, ReadProperties properties, Account primary) {
    String username = properties.standbyUsername();
    String password = properties.standbyPassword();
    return new Account(
        url,
        username == null ? primary.username() : username,
        password == null ? primary.password() : password);
  }

  void fill(Properties properties) {
    if (username != null) {
      properties.setProperty("user", username);
    }
    if (password != null) {
      properties.setProperty("password", password);
    }
  }

  /** Without the password, and without what an address may carry behind a question mark. */
  @Override
  public String toString() {
    return url.replaceFirst("\\?.*", "");
  }
}
