package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.web.form.CommandForm;
import polewright.web.session.CommandResult;
import polewright.web.view.Section;

/**
 * A page that shows what commands print, with forms beneath.
 *
 * @param printed what to run, a heading for each
 */
record PrintedPage(String path, String name, List<Printing> printed, List<CommandForm> forms) implements Page {
    /** A command and what its result is headed by. */
    record Printing(String heading, List<String> words) {}

    @Override
    public List<Section> sections(PageRequest asked) {
        List<Section> sections = new ArrayList<>();
        for (Printing printing : printed) {
            CommandResult ran = asked.desk().run(printing.words());
            sections.add(
                    ran.isGood()
                            ? new Section.Printed(printing.heading(), ran.out())
                            : new Section.Words(printing.heading(), ran.complaints()));
        }
        forms.forEach(form -> sections.add(new Section.Entry(Forms.fresh(asked, form, Map.of()))));
        return sections;
    }
}
