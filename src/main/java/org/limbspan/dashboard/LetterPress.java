package org.limbspan.dashboard;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.EnumSet;
import java.util.Locale;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/**
 * Prints a letter as PDF: the same words and drawings as its page, with a sheet of their own. The
 * font comes with PDFBox (Liberation Sans), so that every machine prints alike.
 */
@Component
class LetterPress {

  private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

  private final ITemplateEngine templates;

  private final File font;

  LetterPress(ITemplateEngine templates) throws IOException {
    this.templates = templates;
    this.font = laidOut();
  }

  byte[] pdf(LetterSheet letter) throws IOException {
    Context context = new Context(Locale.ENGLISH);
    context.setVariable("letter", letter);
    String body = templates.process("letter-print", context);
    String sheet =
        new ClassPathResource("static/css/letter-print.css")
            .getContentAsString(StandardCharsets.UTF_8);
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    try (BatikSVGDrawer drawer = new BatikSVGDrawer()) {
      new PdfRendererBuilder()
          .useFastMode()
          .useSVGDrawer(drawer)
          .useFont(
              font,
              "Letter",
              400,
              FontStyle.NORMAL,
              true,
              EnumSet.of(FSFontUseCase.DOCUMENT, FSFontUseCase.SVG))
          .withHtmlContent(body.replace("</head>", "<style>" + sheet + "</style></head>"), null)
          .toStream(pdf)
          .run();
    }
    return pdf.toByteArray();
  }

  /** The drawings' part of the library takes fonts from files alone. */
  private static File laidOut() throws IOException {
    Path path = Files.createTempFile("limbspan-letter-", ".ttf");
    path.toFile().deleteOnExit();
    try (InputStream font = PDDocument.class.getResourceAsStream(FONT)) {
      if (font == null) {
        throw new IOException(FONT + " is not there");
      }
      Files.copy(font, path, StandardCopyOption.REPLACE_EXISTING);
    }
    return path.toFile();
  }
}
