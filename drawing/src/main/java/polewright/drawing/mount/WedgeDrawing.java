package polewright.drawing.mount;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.mount.rig.MountKind;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;

/**
 * The wedge or mount head from the side, with the altitude screw, and from above, with the azimuth screw: which to
 * turn, in which direction, and where the axis goes.
 *
 * <p>From the side the elevated pole is on the right, as in {@link HomeDrawing}. From above it is at the top, so that
 * right is right for an observer behind the mount facing the pole. The screw to be turned first is drawn first. The
 * axis is inclined by the latitude; nothing else is to scale.
 */
public final class WedgeDrawing {
    private static final int WIDTH = 360;
    private static final double MARGIN = 12;
    private static final double SIZE = 14;
    private static final double HEADING = 62;
    private static final double VIEW = 206;
    private static final double HEADS_APART = 52;
    private static final double LEAST_INSTRUCTION_HEIGHT = 76;
    private static final double HEIGHT_WITHOUT_INSTRUCTION = 34;
    private static final double LINE = 18;
    private static final int LETTERS = 40;

    private enum Screw {
        AZIMUTH("azimuth screw", "azimuth-turn"),
        ALTITUDE("altitude screw", "altitude-turn");

        private final String words;
        private final String turned;

        Screw(String words, String turned) {
            this.words = words;
            this.turned = turned;
        }

        static Screw of(ScrewToTurn turn) {
            return turn.isAzimuth() ? AZIMUTH : ALTITUDE;
        }
    }

    private final MountKind kind;
    private final Site site;
    private final List<ScrewToTurn> turns;
    private final Optional<String> first;
    private final Palette palette;
    private final Svg svg;

    private WedgeDrawing(MountKind kind, Site site, List<ScrewToTurn> turns, Optional<String> first, Palette palette) {
        this.kind = kind;
        this.site = site;
        this.turns = turns;
        this.first = first;
        this.palette = palette;
        double height = HEADING + 2 * VIEW + LINE * care().size() + 14;
        for (Screw screw : order()) {
            height += turn(screw).map(WedgeDrawing::drawInstruction).orElse(HEIGHT_WITHOUT_INSTRUCTION);
        }
        this.svg = new Svg(WIDTH, (int) Math.ceil(height), title(), description(), palette);
    }

    /**
     * A complete SVG document, which can also be embedded in a page.
     *
     * @param turns in the order in which they are to be made, at most one for each screw
     */
    public static String svg(MountKind kind, Site site, List<ScrewToTurn> turns, Palette palette) {
        requireScrews(kind);
        return new WedgeDrawing(kind, site, List.copyOf(turns), Optional.empty(), palette).drawn();
    }

    /**
     * The same while no screw is to be turned yet.
     *
     * @param first what comes first, a few words: {@code take the sighting first}
     */
    public static String notYet(MountKind kind, Site site, String first, Palette palette) {
        requireScrews(kind);
        return new WedgeDrawing(kind, site, List.of(), Optional.of(first), palette).drawn();
    }

    private static void requireScrews(MountKind kind) {
        if (!kind.hasPolarAxis()) {
            throw new InputRefused("a " + kind.words() + " has no polar-axis screws", "set the fork on a wedge first");
        }
    }

    private String drawn() {
        text(MARGIN, 24, Anchor.START, 16, heading());
        text(MARGIN, 44, Anchor.START, SIZE, "As you look at the head of the screw");
        double y = HEADING;
        for (Screw screw : order()) {
            Optional<ScrewToTurn> turn = turn(screw);
            Look look = turn.isPresent()
                    ? Look.filled(palette.axis(), palette.axis(), 5)
                    : Look.filled(palette.metal(), palette.ink(), 2.4);
            WedgeSketch sketch = new WedgeSketch(svg, palette, kind, site, look);
            switch (screw) {
                case AZIMUTH -> sketch.fromAbove(y, turn);
                case ALTITUDE -> sketch.fromSide(y, turn);
            }
            y += VIEW;
            y += drawInstruction(y, screw, turn);
        }
        for (String line : care()) {
            text(MARGIN, y + 14, Anchor.START, SIZE, line);
            y += LINE;
        }
        return svg.finished();
    }

    /** The instruction for one screw: the head with its arrow, and the words. */
    private double drawInstruction(double y, Screw screw, Optional<ScrewToTurn> turn) {
        if (turn.isEmpty()) {
            text(
                    MARGIN,
                    y + 14,
                    Anchor.START,
                    SIZE,
                    "Leave the " + screw.words + (first.isPresent() ? " for now." : " alone."));
            return HEIGHT_WITHOUT_INSTRUCTION;
        }
        double x = MARGIN + 24;
        svg.open(screw.turned);
        for (double leg : turn.get().legs()) {
            new ScrewHead(svg, palette).turned(new Vector2D(x, y + 30), leg > 0);
            x += HEADS_APART;
        }
        svg.close();
        String number = turns.size() > 1 ? turns.indexOf(turn.get()) + 1 + ". " : "";
        text(x - 20, y + 14, Anchor.START, 15, number + capitalised(screw.words));
        double line = y + 14 + LINE;
        for (String words : words(turn.get())) {
            text(x - 20, line, Anchor.START, SIZE, words);
            line += LINE;
        }
        return drawInstruction(turn.get());
    }

    private static double drawInstruction(ScrewToTurn turn) {
        return Math.max(LEAST_INSTRUCTION_HEIGHT, LINE * (1.5 + words(turn).size()));
    }

    /** Wrapped to fit next to the heads. */
    private static List<String> words(ScrewToTurn turn) {
        double room = WIDTH - 2 * MARGIN - 4 - HEADS_APART * turn.legs().size();
        int letters = (int) (room / Lettering.width("n", SIZE));
        return turn.words().stream()
                .flatMap(leg -> Lettering.wrapped(leg, letters, 3).stream())
                .toList();
    }

    private List<Screw> order() {
        boolean azimuthFirst = !turns.isEmpty() && Screw.of(turns.get(0)) == Screw.AZIMUTH;
        return azimuthFirst ? List.of(Screw.AZIMUTH, Screw.ALTITUDE) : List.of(Screw.ALTITUDE, Screw.AZIMUTH);
    }

    private Optional<ScrewToTurn> turn(Screw screw) {
        return turns.stream().filter(t -> Screw.of(t) == screw).findFirst();
    }

    private String heading() {
        return switch (turns.size()) {
            case 0 -> first.map(words -> "Not yet: " + words).orElse("Leave both screws alone");
            case 1 -> "Turn the " + Screw.of(turns.get(0)).words;
            default -> "First the " + Screw.of(turns.get(0)).words;
        };
    }

    private List<String> care() {
        return Lettering.wrapped("CARE: " + kind.weightCaution() + ".", LETTERS, 2);
    }

    private String title() {
        return heading() + ": " + kind.words();
    }

    private String description() {
        List<String> sentences = new ArrayList<>();
        sentences.add("The mount from the side, the " + pole()
                + " celestial pole to the right, and from above, the pole" + " at the top.");
        for (ScrewToTurn turn : turns) {
            sentences.add(capitalised(Screw.of(turn).words) + ": " + String.join(" ", turn.words()) + "; the axis goes "
                    + WedgeSketch.movementWords(turn, site) + ".");
        }
        sentences.add(String.join(" ", care()));
        return String.join(" ", sentences);
    }

    private String pole() {
        return site.isNorthern() ? "north" : "south";
    }

    private void text(double x, double y, Anchor anchor, double size, String words) {
        svg.text(new Vector2D(x, y), anchor, size, palette.text(), words);
    }

    private static String capitalised(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
