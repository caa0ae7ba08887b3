/**
 * The PostgreSQL that the service brings along and runs itself, unless {@code
 * spring.datasource.url} names another one. Entry point {@link
 * org.limbspan.platform.database.EmbeddedDatabase}.
 *
 * <p>Everything lasting is in {@code limbspan.home}:
 *
 * <ul>
 *   <li>{@code limbspan.lock}: held by the one service that uses the home; names its process
 *   <li>{@code postgresql/}: the programs, unpacked from the jar
 *   <li>{@code database/}: the data directory, with the settings in {@code limbspan.conf} and the
 *       generated password in {@code limbspan.password}
 *   <li>{@code database.log}: what the server says
 * </ul>
 */
@NullMarked
package org.limbspan.platform.database;

import org.jspecify.annotations.NullMarked;
