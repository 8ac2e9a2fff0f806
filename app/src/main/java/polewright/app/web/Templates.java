package polewright.app.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import polewright.app.web.view.PageView;

/** The pages' templates, compiled with the program. */
final class Templates {
    private final TemplateEngine engine = TemplateEngine.createPrecompiled(ContentType.Html);

    /** A whole page; whatever a person typed is escaped in it. */
    String html(PageView page) {
        StringOutput html = new StringOutput();
        engine.render("web/page.jte", page, html);
        return html.toString();
    }
}
