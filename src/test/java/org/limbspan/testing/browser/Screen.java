package org.limbspan.testing.browser;

import com.microsoft.playwright.Browser;

/** What the visitor looks at. */
public enum Screen {
  LAPTOP(1280, 900, false),
  PHONE(390, 844, true);

  private final int widthPx;
  private final int heightPx;
  private final boolean touch;

  Screen(int widthPx, int heightPx, boolean touch) {
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.touch = touch;
  }

  public int widthPx() {
    return widthPx;
  }

  Browser.NewContextOptions options() {
    return new Browser.NewContextOptions()
        .setViewportSize(widthPx, heightPx)
        .setHasTouch(touch)
        .setIsMobile(touch)
        .setDeviceScaleFactor(touch ? 2 : 1);
  }
}
