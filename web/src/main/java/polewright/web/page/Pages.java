package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.NightForms;
import polewright.web.session.PracticeAddress;

/** All pages. */
public final class Pages {
    /** Where the devices are listed that may come in. */
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
    private static final List<Page> ALL = all();

    private Pages() {}

    /** Those that are listed on every page, in the order of a night. */
    public static List<Page> places() {
        return PLACES;
    }

    /** Those, those that a night leads to, and a page for each form. */
    public static List<Page> everyone() {
        return ALL;
    }

    /** The page on which a form stands alone: there it is shown again when something is wrong with it. */
    public static Page of(CommandForm form) {
        return new FormPage(path(form), form);
    }

    /** Where a form has a page of its own. */
    static String path(CommandForm form) {
        return form.equals(NightForms.BEGIN) ? "/begin" : "/sightings/" + form.id();
    }

    private static List<Page> all() {
        List<Page> all = new ArrayList<>(PLACES);
        all.add(DEBRIEF);
        all.add(new ComparePage());
        all.add(new SeasonsPage());
        all.add(new DevicesPage());
        CommandForms.all().forEach(form -> all.add(of(form)));
        return List.copyOf(all);
    }
}
