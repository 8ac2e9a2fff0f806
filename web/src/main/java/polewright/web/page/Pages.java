package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.NightForms;
import polewright.web.session.PracticeAddress;

/** All pages. */
public final class Pages {
    /** The page of the paired devices. */
    public static final String DEVICES = "/devices";

    private static final List<Page> PLACES = List.of(
            new NowPage(),
            new GroundPage(),
            new WorkPage(),
            new SightingsPage(),
            new FramesPage(),
            new FixPage(),
            new TonightPage(),
            new PointingPage(),
            new NightPage(),
            new RigPage(),
            new PracticePage());
    private static final Page DEBRIEF = new PrintedPage(
            PracticeAddress.DEBRIEF,
            "Debrief",
            List.of(new PrintedPage.Printing("Result", List.of("practice", "debrief"))),
            List.of());
    private static final List<Page> ALL = collect();

    private Pages() {}

    /** The pages in the menu, in the order of a night. */
    public static List<Page> menu() {
        return PLACES;
    }

    /** The menu's pages, those linked from a night, and a page for each form. */
    public static List<Page> all() {
        return ALL;
    }

    /** The page with this form alone, on which it is shown again if an entry is wrong. */
    public static Page of(CommandForm form) {
        return new FormPage(path(form), form);
    }

    /** The address of a form's own page. */
    static String path(CommandForm form) {
        return form.equals(NightForms.BEGIN) ? "/begin" : "/sightings/" + form.id();
    }

    private static List<Page> collect() {
        List<Page> all = new ArrayList<>(PLACES);
        all.add(DEBRIEF);
        all.add(new ComparePage());
        all.add(new SeasonsPage());
        all.add(new DevicesPage());
        CommandForms.all().forEach(form -> all.add(of(form)));
        return List.copyOf(all);
    }
}
