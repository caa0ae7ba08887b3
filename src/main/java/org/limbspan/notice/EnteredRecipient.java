package org.limbspan.notice;

import org.jspecify.annotations.Nullable;

/**
 * A recipient that was entered.
 *
 * @param secret with which a webhook's notices are signed, told this once; null for mail
 */
public record EnteredRecipient(Recipient recipient, @Nullable String secret) {}
