package org.limbspan.notice;

/** A recipient to be entered. */
public record NewRecipient(Channel channel, String address, Wishes wishes) {}
