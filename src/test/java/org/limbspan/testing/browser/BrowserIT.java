package org.limbspan.testing.browser;

import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;
import org.limbspan.testing.LimbspanIT;

/**
 * The whole service as in {@link LimbspanIT}, and a real browser that visits it: a test method
 * takes a {@link Visitor} as its parameter.
 *
 * <p>The browser is the program that the system property {@code limbspan.test.browser} or the
 * environment variable {@code LIMBSPAN_TEST_BROWSER} names, otherwise the Chromium found where
 * systems keep it. A machine without one steps aside: the tests are skipped, and say why.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@LimbspanIT
@ExtendWith(BrowserExtension.class)
public @interface BrowserIT {}
