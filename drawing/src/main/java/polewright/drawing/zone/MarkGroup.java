package polewright.drawing.zone;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import polewright.drawing.Box;
import polewright.drawing.zone.MapMark.Kind;

/**
 * Marks that share one label: one, or several that nearly coincide.
 *
 * @param marks in the order in which they are named; an earlier fix among them is not named
 */
record MarkGroup(List<MapMark> marks) {
    MarkGroup {
        marks = marks.stream().sorted(Comparator.comparing(MapMark::kind)).toList();
    }

    /** Groups of marks that nearly coincide; groups of earlier fixes only are left out because they have no name. */
    static List<MarkGroup> of(List<MapMark> marks) {
        List<List<MapMark>> groups = new ArrayList<>();
        for (MapMark mark : marks) {
            List<MapMark> joined = new ArrayList<>(List.of(mark));
            groups.removeIf(group -> {
                boolean belongs = group.stream().anyMatch(mark::nearlyCoincidesWith);
                if (belongs) {
                    joined.addAll(group);
                }
                return belongs;
            });
            groups.add(joined);
        }
        return groups.stream()
                .map(MarkGroup::new)
                .filter(group -> !group.named().isEmpty())
                .sorted(Comparator.comparing(group -> group.marks().get(0).kind()))
                .toList();
    }

    List<Kind> named() {
        return marks.stream()
                .map(MapMark::kind)
                .filter(kind -> kind != Kind.EARLIER)
                .distinct()
                .toList();
    }

    /** Whether text in that box is nearer to one of these than to any other mark, by at least {@code by}. */
    boolean isNearestTo(Box text, List<MapMark> all, double by) {
        double own = marks.stream()
                .filter(mark -> mark.kind() != Kind.EARLIER)
                .mapToDouble(mark -> text.distanceTo(mark.box()))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        return all.stream()
                .filter(mark -> !marks.contains(mark))
                .allMatch(mark -> own + by <= text.distanceTo(mark.box()));
    }

    /**
     * Its label, line by line.
     *
     * @param unitsPerArcmin of the map
     */
    List<String> lines(ZoneScene scene, double unitsPerArcmin) {
        List<Kind> kinds = named();
        if (kinds.equals(List.of(Kind.AIM, Kind.POLE))) {
            double apart = marks.get(0).at().distance(marks.get(1).at());
            return apart < 1
                    ? List.of("best aim and", "true pole")
                    : List.of("best aim and", "true pole,", poleFromAim(scene, unitsPerArcmin));
        }
        return listed(kinds.stream().map(Kind::words).toList());
    }

    /** Its label if the zone is a speck containing all of these: aim and pole need not be mentioned. */
    List<String> linesAsZone() {
        Stream<String> others = named().stream()
                .filter(kind -> kind != Kind.AIM && kind != Kind.POLE)
                .map(Kind::words);
        return listed(Stream.concat(Stream.of("the zone"), others).toList());
    }

    private static List<String> listed(List<String> names) {
        List<String> lines = new ArrayList<>(names);
        for (int i = 0; i < lines.size() - 1; i++) {
            lines.set(i, lines.get(i) + ",");
        }
        return lines;
    }

    private String poleFromAim(ZoneScene scene, double unitsPerArcmin) {
        double right = marks.get(1).at().getX() - marks.get(0).at().getX();
        double down = marks.get(1).at().getY() - marks.get(0).at().getY();
        String where = "from it";
        if (Math.abs(down) > 2 * Math.abs(right)) {
            where = down > 0 ? "below it" : "above it";
        } else if (Math.abs(right) > 2 * Math.abs(down)) {
            where = (right > 0 ? scene.rightWord() : scene.leftWord()) + " of it";
        }
        return figure(Math.hypot(right, down) / unitsPerArcmin) + " " + where;
    }

    private static String figure(double arcmin) {
        return arcmin >= 0.1
                ? String.format(Locale.ROOT, "%.1f′", arcmin)
                : String.format(Locale.ROOT, arcmin >= 0.05 ? "%.0f″" : "%.1f″", 60 * arcmin);
    }
}
