/**
 * Who may send requests, and from where. On the loopback interface without a password: anybody who
 * uses this computer, but no foreign web page. Otherwise: the owner, by password.
 */
@NullMarked
package org.limbspan.platform.access;

import org.jspecify.annotations.NullMarked;
