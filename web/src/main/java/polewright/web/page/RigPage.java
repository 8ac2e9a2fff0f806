package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import polewright.drawing.mount.RigLengthsDrawing;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.TravelLimits;
import polewright.report.text.CorrectionWords;
import polewright.report.text.ScrewWords;
import polewright.session.event.NightEvent;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.Site;
import polewright.web.form.SetupForms;
import polewright.web.session.NightSession.Tonight;
import polewright.web.view.Section;

/** The site, its horizon, and the mount. */
final class RigPage implements Page {
    @Override
    public String path() {
        return "/rig";
    }

    @Override
    public String name() {
        return "Rig and site";
    }

    @Override
    public List<Section> sections(PageRequest request) {
        return request.session()
                .tonight()
                .map(tonight -> of(request, tonight))
                .orElseGet(() -> List.of(
                        new Section.Words(
                                "", List.of("No night has begun yet. Site and rig are entered when one begins.")),
                        new Section.Ways("", List.of(new Section.Way(request.to("/begin"), "Begin a night", true)))));
    }

    private static List<Section> of(PageRequest request, Tonight tonight) {
        NightEvent.Begun begun = tonight.state().begun();
        Rig rig = begun.rig();
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Entry(Forms.fresh(
                request,
                SetupForms.HORIZON,
                Map.of("corners", Sketches.typed(tonight.state().horizon())))));
        sections.add(new Section.Presses(
                "No corners",
                List.of(new Section.Press(
                        SetupForms.OPEN_SKY.title(), Forms.fresh(request, SetupForms.OPEN_SKY, Map.of())))));
        sections.add(site(request, begun));
        sections.add(new Section.Entry(Forms.fresh(request, SetupForms.SITE, Map.of())));
        sections.add(mount(rig));
        ScrewWords.assumed(rig).ifPresent(words -> sections.add(new Section.Words("", List.of(words))));
        sections.add(new Section.Entry(Forms.fresh(request, SetupForms.RIG, Map.of())));
        otherRigs(request, rig).ifPresent(sections::add);
        sections.add(looking(rig));
        RigLengthsDrawing.svgs(rig, request.palette()).forEach(svg -> sections.add(new Section.Drawing("", svg)));
        sections.add(new Section.Words(
                "Other rig settings",
                List.of("At the laptop, polewright rig > rig.json writes it to a file. Edit that, then"
                        + " polewright rig correct --rig rig.json, or begin the next night with it.")));
        return sections;
    }

    /** The rigs of earlier nights, one button each; empty if there was no other. */
    private static Optional<Section> otherRigs(PageRequest request, Rig rig) {
        List<Section.Press> others = request.session().rigs().stream()
                .filter(other -> !other.name().equalsIgnoreCase(rig.name()))
                .map(other -> new Section.Press(
                        "It is " + other.name(),
                        Forms.fresh(request, SetupForms.KNOWN_RIG, Map.of("known", other.name()))))
                .toList();
        return others.isEmpty()
                ? Optional.empty()
                : Optional.of(new Section.Presses("If this is another of your rigs", others));
    }

    private static Section site(PageRequest request, NightEvent.Begun begun) {
        Site site = begun.site();
        Angle declination = MagneticModel.wmm2025()
                .field(site, request.session().workbench().now())
                .declination();
        return new Section.Table(
                "Site",
                List.of("", "known"),
                List.of(
                        row("Name", begun.siteName().isEmpty() ? "none" : begun.siteName()),
                        row(
                                "Latitude",
                                degrees(site.latitude().abs(), 4)
                                        + (site.latitude().radians() < 0 ? " S" : " N")),
                        row(
                                "Longitude",
                                degrees(site.longitude().abs(), 4)
                                        + (site.longitude().radians() < 0 ? " W" : " E")),
                        row("Height", Math.round(site.heightMetres()) + " m"),
                        row(
                                "Pole",
                                degrees(site.poleAltitude(), 1) + " above the "
                                        + (site.isNorthern() ? "north" : "south")),
                        row("Compass", compass(declination))));
    }

    private static Section mount(Rig rig) {
        List<List<String>> rows = new ArrayList<>(
                List.of(row("Name", rig.name()), row("Kind", rig.kind().words())));
        if (rig.kind().hasPolarAxis()) {
            rows.addAll(List.of(
                    row("Altitude screw", words(rig.altitudeScrew())),
                    row("Azimuth screw", words(rig.azimuthScrew())),
                    row("Base is level to", PlainNumber.asRead(rig.levelSigma().degrees()) + "°"),
                    row(
                            "Clamping moves the axis",
                            "by about " + PlainNumber.asRead(rig.clampSigma().arcminutes()) + "′")));
        }
        TravelLimits travel = rig.travel();
        rows.add(row("Lowest altitude", degrees(travel.lowestAltitude(), 0)));
        rows.add(row("RA travel", swing(travel)));
        return new Section.Table("Mount", List.of("", "known"), rows);
    }

    private static String compass(Angle declination) {
        String degrees = degrees(declination.abs(), 1);
        return degrees.equals("0.0°")
                ? "points to true north"
                : "points " + degrees + (declination.radians() < 0 ? " west" : " east") + " of true north";
    }

    private static String swing(TravelLimits travel) {
        long east = Math.round(travel.eastLimit().degrees());
        long west = Math.round(travel.westLimit().degrees());
        return east == -180 && west == 180 ? "no limits" : "ends at hour angles " + east + "° and " + west + "°";
    }

    private static String words(Screw screw) {
        return CorrectionWords.of(screw.geometry()) + "; " + CorrectionWords.clockwise(screw.clockwise());
    }

    private static Section looking(Rig rig) {
        List<List<String>> rows = new ArrayList<>();
        for (Optic optic : rig.optics()) {
            rows.add(row(
                    optic.name(),
                    degrees(optic.field(), 2) + " wide, "
                            + switch (optic.view().orientation()) {
                                case ERECT -> "erect";
                                case INVERTED -> "upside down";
                                case MIRRORED -> "mirrored";
                            }
                            + optic.division()
                                    .map(division ->
                                            ", divisions of " + PlainNumber.asRead(division.arcseconds()) + "″")
                                    .orElse("")));
        }
        for (Camera camera : rig.cameras()) {
            rows.add(row(camera.name(), "camera, " + degrees(camera.field(), 2) + " wide"));
        }
        return rows.isEmpty()
                ? new Section.Words("Optics", List.of("No finder, eyepiece or camera entered."))
                : new Section.Table("Optics", List.of("", "field and view"), rows);
    }

    private static List<String> row(String name, String value) {
        return List.of(name, value);
    }

    private static String degrees(Angle angle, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f°", angle.degrees());
    }
}
