package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.SetupForms;

/** All pages. */
public final class Pages {
    /** The page of the paired devices. */
    public static final String DEVICES = "/devices";

    private static final Page NOW = new NowPage();
    private static final MorePage MORE = new MorePage(List.of(
            new MorePage.Link(new GroundPage(), "compass, wedge and level by day"),
            new MorePage.Link(new WorkPage(), "what tonight is for"),
            new MorePage.Link(new RigPage(), "mount, optics, skyline"),
            new MorePage.Link(new PracticePage(), "a simulated wedge"),
            new MorePage.Link(new DevicesPage(), "phones that may connect")));
    private static final List<MenuEntry> MENU = List.of(
            new MenuEntry("Now", List.of(NOW)),
            new MenuEntry("Sightings", List.of(new SightingsPage(), new FramesPage())),
            new MenuEntry("Axis", List.of(new FixPage(), new NightPage())),
            new MenuEntry("Sky", List.of(new TonightPage(), new PointingPage())),
            new MenuEntry("More", more()));
    private static final Page DEBRIEF = new DebriefPage();
    private static final List<Page> ALL = collect();

    private Pages() {}

    /** The page with the one thing to do. */
    public static Page now() {
        return NOW;
    }

    /** The menu: few entries, so that they fit side by side on a phone; each page is under one of them. */
    public static List<MenuEntry> menu() {
        return MENU;
    }

    /** The pages under the same entry, itself among them; empty if it is alone there or is the list of them. */
    public static List<Page> siblings(Page page) {
        if (page.equals(MORE)) {
            return List.of();
        }
        List<Page> siblings = MENU.stream()
                .filter(entry -> entry.holds(page))
                .flatMap(entry -> entry.pages().stream())
                .filter(each -> !each.equals(MORE))
                .toList();
        return siblings.size() < 2 ? List.of() : siblings;
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
        return form.equals(SetupForms.BEGIN) ? "/begin" : "/sightings/" + form.id();
    }

    private static List<Page> more() {
        List<Page> more = new ArrayList<>(List.of(MORE));
        MORE.links().forEach(link -> more.add(link.page()));
        return more;
    }

    private static List<Page> collect() {
        List<Page> all = new ArrayList<>();
        MENU.forEach(entry -> all.addAll(entry.pages()));
        all.add(DEBRIEF);
        all.add(new ComparePage());
        all.add(new SeasonsPage());
        CommandForms.all().forEach(form -> all.add(of(form)));
        return List.copyOf(all);
    }
}
