package polewright.mount.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.sky.place.Site;

/**
 * The home position as instructions: what to set, in order, from bare ground to a tube parallel to the polar axis (or,
 * on an upright fork, to a level tube facing true north).
 *
 * <p>The order, the hour angles and the cautions are common practice. The drawing of the same position is
 * {@code polewright.drawing.mount.HomeDrawing}.
 *
 * @param kind the mount
 * @param steps in the order in which to do them
 */
public record HomePosition(MountKind kind, List<Step> steps) {
    private static final String SUN = "never near the Sun without a proper filter; by day cap tube and finder.";

    /**
     * One step.
     *
     * @param cautions to be read before the step
     * @param instruction what to do
     * @param remarks how to check the result, or other notes
     */
    public record Step(List<String> cautions, String instruction, List<String> remarks) {
        public Step {
            cautions = List.copyOf(cautions);
            remarks = List.copyOf(remarks);
        }

        static Step of(String instruction, String... remarks) {
            return new Step(List.of(), instruction, List.of(remarks));
        }

        Step takingCare(String... more) {
            return new Step(List.of(more), instruction, remarks);
        }
    }

    public HomePosition {
        steps = List.copyOf(steps);
    }

    public static HomePosition of(MountKind kind, Site site) {
        Words words = Words.of(site);
        return new HomePosition(
                kind,
                switch (kind) {
                    case FORK_ON_WEDGE -> forkOnWedge(words);
                    case FORK_UPRIGHT -> forkUpright(words);
                    case GERMAN -> german(words);
                    case TRACKER -> tracker(words);
                });
    }

    /** For printing: numbered, each caution before its step, at most 80 characters per line. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            step.cautions().forEach(caution -> lines.add("   CARE: " + caution));
            lines.add((i + 1) + ". " + step.instruction());
            step.remarks().forEach(remark -> lines.add("   " + remark));
        }
        return List.copyOf(lines);
    }

    private static List<Step> forkOnWedge(Words words) {
        return List.of(
                Step.of("Place the tripod with one leg toward true " + words.poleward + ".")
                        .takingCare(
                                "a tilted fork leans toward the " + words.poleward + " and can tip the tripod.",
                                "spread the legs fully; hang a weight low if it rocks."),
                levelBase(),
                setLatitude("Tilt the wedge", "with the plate flat", words),
                Step.of("Turn the wedge so that its plate faces up toward true " + words.poleward + "."),
                Step.of("Bolt the fork to the plate.")
                        .takingCare(
                                "a fork and tube are heavy: two people lift, one bolts.",
                                "do not let go before every bolt is tight.",
                                "from now on, hold the fork's weight whenever you loosen the tilt clamp."),
                Step.of("Turn the fork until its arms are level, one east, one west.", "Hour angle 0 h.")
                        .takingCare("hold the tube before you free a clamp.", SUN),
                Step.of(
                                "Turn the tube between the arms until it points up along them.",
                                "Declination " + words.poleDeclination + ". The tube is parallel to the polar axis.")
                        .takingCare("a camera at the back may strike the fork's base: swing slowly."),
                Step.of(
                        "Check: bring the declination toward 0°.",
                        "The tube must swing over the top, toward the " + words.equatorward + ".",
                        "If it dips down instead, turn the fork half a turn and set " + words.poleDeclination
                                + " again."),
                cables());
    }

    private static List<Step> forkUpright(Words words) {
        List<String> swinging = new ArrayList<>(List.of("hold the tube before you free a clamp.", SUN));
        if (words.noonSunCanBeNorth) {
            swinging.add("the noon Sun can be in the north here, where the tube will face.");
        }
        return List.of(
                Step.of("Place the tripod on firm ground, legs fully spread."),
                Step.of(
                        "Level the base with a bubble, in two directions.",
                        "The fork must be vertical: there is no wedge and no polar axis to set."),
                Step.of("Bolt the fork to the tripod.")
                        .takingCare(
                                "a fork and tube are heavy: two people lift, one bolts.",
                                "do not let go before every bolt is tight."),
                new Step(
                        swinging,
                        "Turn the fork until the tube faces true north. Azimuth 0°.",
                        List.of("North in both hemispheres: azimuth is measured from north.")),
                Step.of("Set the tube level. Altitude 0°.", "Long exposures will show field rotation."),
                cables());
    }

    private static List<Step> german(Words words) {
        return List.of(
                Step.of(
                                "Place the tripod with one leg toward true " + words.poleward + ".",
                                "The counterweight will hang over that leg.")
                        .takingCare("a head with its weights can tip the tripod: spread the legs fully."),
                levelBase(),
                setLatitude("Tilt the mount's head", "with the axis upright", words),
                Step.of("Turn the head so that the axis's upper end faces true " + words.poleward + "."),
                Step.of("Fit the counterweight and its end stop.")
                        .takingCare("weight on first, tube last; when packing up, tube off first."),
                Step.of(
                                "Turn the hour axis until the counterweight shaft is at its lowest.",
                                "Hour angle 6 h, east or west. Clamp it there.")
                        .takingCare("keep feet from under the weight."),
                Step.of("Fit the tube, on top.")
                        .takingCare("two people for a heavy tube; hold it before you free a clamp.", SUN),
                Step.of(
                        "Turn the tube, above the mount, until its front faces the pole.",
                        "Declination " + words.poleDeclination + ". The tube is parallel to the polar axis."),
                cables());
    }

    private static List<Step> tracker(Words words) {
        return List.of(
                Step.of("Place the tripod with one leg toward true " + words.poleward + ".")
                        .takingCare("a light tripod tips and blows over: legs spread, a weight hung low."),
                levelBase(),
                setLatitude("Tilt the tracker", "with the axis upright", words),
                Step.of("Turn it so that the axis's upper end faces true " + words.poleward + "."),
                Step.of(
                                "Fit the camera. It may point anywhere; only the axis has a home position.",
                                "Keep camera, lens hood and strap off the polar sight's line.")
                        .takingCare("one hand on the camera until every clamp is tight.", SUN),
                Step.of(
                        "Look up the polar sight, or along the body's edge if it has none.",
                        "Nothing may block its view of the " + words.poleName + "."),
                cables());
    }

    private static Step levelBase() {
        return Step.of("Level the base with a bubble, in two directions.");
    }

    private static Step setLatitude(String tilt, String upright, Words words) {
        List<String> remarks = new ArrayList<>();
        remarks.add("If the scale reads 90 " + upright + ", it shows latitude: set " + words.latitude + ".");
        remarks.add("If it reads 0 " + upright + ", it counts from the zenith: set " + words.fromUpright + ".");
        if (words.isBeyondUsualTilt) {
            remarks.add("Many mounts do not tilt that far. Never force one past its stop.");
        }
        if (words.isNearPole) {
            remarks.add("No compass works this close to the pole. Find north by the Sun or a star.");
        }
        return new Step(
                List.of(), tilt + " to your latitude, " + words.latitude + ", and clamp it.", List.copyOf(remarks));
    }

    private static Step cables() {
        return Step.of("Plug in. Leave enough slack in the cables for a full swing.")
                .takingCare(
                        "mains and dew can kill: a battery is safest.",
                        "if mains: a residual-current breaker, dry joints off the ground.",
                        "follow local electrical rules.");
    }

    /** The wording that depends on the site. */
    private record Words(
            boolean noonSunCanBeNorth,
            String poleward,
            String equatorward,
            String poleName,
            String poleDeclination,
            String latitude,
            String fromUpright,
            boolean isBeyondUsualTilt,
            boolean isNearPole) {
        // Commercial wedges and heads range from about 20° to 65° (common practice).
        private static final double LEAST_TILT_DEG = 20;
        private static final double GREATEST_TILT_DEG = 65;
        private static final double NEAR_POLE_DEG = 85;
        // Obliquity of the ecliptic, to 0.01° (IAU 2006: 84381.406″ at J2000.0).
        private static final double TROPIC_DEG = 23.44;

        static Words of(Site site) {
            boolean northern = site.isNorthern();
            double degrees = site.poleAltitude().degrees();
            // The scale is read in tenths, and the two values must add up to 90.
            long tenths = Math.round(degrees * 10);
            return new Words(
                    site.latitude().degrees() < TROPIC_DEG,
                    northern ? "north" : "south",
                    northern ? "south" : "north",
                    northern ? "north celestial pole" : "south celestial pole",
                    northern ? "+90°" : "-90°",
                    figure(tenths),
                    figure(900 - tenths),
                    degrees < LEAST_TILT_DEG || degrees > GREATEST_TILT_DEG,
                    degrees > NEAR_POLE_DEG);
        }

        private static String figure(long tenths) {
            return String.format(Locale.ROOT, "%d.%d°", tenths / 10, tenths % 10);
        }
    }
}
