package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.web.form.CommandForm;
import polewright.web.session.CommandResult;
import polewright.web.view.Section;

/**
 * A page that shows the output of commands, with forms below.
 *
 * @param printed the commands to run, with a heading for each
 */
record PrintedPage(String path, String name, String menuPath, List<Printing> printed, List<CommandForm> forms)
        implements Page {
    /** A command and the heading of its output. */
    record Printing(String heading, List<String> words) {}

    @Override
    public List<Section> sections(PageRequest request) {
        List<Section> sections = new ArrayList<>();
        for (Printing printing : printed) {
            CommandResult result = request.session().run(printing.words());
            sections.add(
                    result.isGood()
                            ? new Section.Printed(printing.heading(), result.out())
                            : new Section.Words(printing.heading(), result.complaints()));
        }
        forms.forEach(form -> sections.add(new Section.Entry(Forms.fresh(request, form, Map.of()))));
        return sections;
    }
}
