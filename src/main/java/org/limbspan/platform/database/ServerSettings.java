package org.limbspan.platform.database;

/** Settings of the server that the service brings along, written anew at each start. */
final class ServerSettings {

  private ServerSettings() {}

  static String text(int port) {
    return """
    # Written by Limbspan at each start; changes here do not last.

    listen_addresses = '127.0.0.1'
    port = %d
    unix_socket_directories = ''
    max_connections = 30

    # What was answered as stored is on the disk.
    fsync = on
    full_page_writes = on
    synchronous_commit = on
    # Nothing is left for this writer to do, so it need not look five times a second.
    wal_writer_delay = '5s'
    max_wal_size = '256MB'

    # A small computer with little else to give.
    shared_buffers = '64MB'
    work_mem = '8MB'
    maintenance_work_mem = '64MB'
    io_method = sync
    max_parallel_workers_per_gather = 0
    max_logical_replication_workers = 0
    jit = off

    timezone = 'UTC'
    log_timezone = 'UTC'
    log_checkpoints = off
    """
        .formatted(port);
  }
}
