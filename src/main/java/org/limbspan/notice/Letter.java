package org.limbspan.notice;

/**
 * A notice in words.
 *
 * @param subject one line
 * @param text plain, lines broken by line feeds
 * @param page path of the page that tells more
 */
record Letter(String subject, String text, String page) {}
