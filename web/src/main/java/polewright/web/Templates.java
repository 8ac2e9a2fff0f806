package polewright.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.html.escape.Escape;
import gg.jte.output.StringOutput;
import polewright.web.view.PageView;

/** The pages' templates, compiled with the program. */
final class Templates {
    private static final TemplateEngine ENGINE = TemplateEngine.createPrecompiled(ContentType.Html);

    private Templates() {}

    /** A whole page; user input in it is escaped. */
    static String html(PageView page) {
        StringOutput html = new StringOutput();
        ENGINE.render("web/page.jte", page, html);
        return html.toString();
    }

    /** Plain text, escaped for HTML. */
    static String escaped(String text) {
        StringOutput html = new StringOutput();
        Escape.htmlContent(text, html);
        return html.toString();
    }

    /** The page for a device that is not paired; {@code complaint} may be empty. */
    static String pairing(String complaint) {
        StringOutput html = new StringOutput();
        ENGINE.render("web/pair.jte", complaint, html);
        return html.toString();
    }
}
