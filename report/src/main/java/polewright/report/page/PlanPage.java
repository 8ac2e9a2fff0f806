package polewright.report.page;

import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;

/**
 * The plan of a night on one page.
 *
 * @param title the page's heading
 * @param worth whether the night is worthwhile, one line
 * @param times sunset, twilight, the Moon
 * @param plan the order of the night
 * @param rest other good targets, and what cannot be observed
 * @param picture altitudes over time, SVG
 * @param isDark dim red on black, for a screen at the telescope; otherwise black on white, for paper
 */
public record PlanPage(
        String title,
        String worth,
        List<String> times,
        List<String> plan,
        List<String> rest,
        String picture,
        boolean isDark) {
    // An outline drawn over the letters hides them, and the PDF renderer does not support another order.
    private static final String RIM = " stroke=\"[^\"]*\" stroke-width=\"4\" paint-order=\"stroke\"";

    /** HTML that is also well-formed XML, self-contained. */
    public String html() {
        StringOutput html = new StringOutput();
        TemplateEngine.createPrecompiled(ContentType.Html).render("plan.jte", this, html);
        return html.toString();
    }

    /** The same as PDF, A4. */
    public byte[] pdf() {
        XRLog.setLoggingEnabled(false);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (BatikSVGDrawer drawer = new BatikSVGDrawer()) {
            PdfRendererBuilder builder = new PdfRendererBuilder();
            builder.useSVGDrawer(drawer);
            builder.withHtmlContent(inPlainLetters(html().replaceAll(RIM, "")), null);
            builder.toStream(bytes);
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The standard PDF fonts have no primes and no Greek: a letter's name replaces it. */
    private static String inPlainLetters(String html) {
        StringBuilder plain = new StringBuilder();
        html.replace('′', '\'')
                .replace("″", "''")
                .replace('−', '-')
                .codePoints()
                .forEach(letter -> {
                    if (Character.UnicodeScript.of(letter) == Character.UnicodeScript.GREEK) {
                        plain.append(Character.getName(letter)
                                .replaceFirst(".* ", "")
                                .toLowerCase(Locale.ROOT));
                    } else {
                        plain.appendCodePoint(letter);
                    }
                });
        return plain.toString();
    }
}
