package polewright.planning.tonight;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;
import polewright.sky.body.SunGuard;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;

/**
 * The order in which to go to a few stars: the one with the least total rotation of the slower axes, and no slew near
 * the Sun.
 *
 * <p>The lower axis never rotates through its lower culmination (hour angle 12 h; azimuth 180° of a fork that starts
 * north), because that winds up the cables. By day a slew keeps {@link SunGuard#KEEP_AWAY} from the Sun's limb
 * throughout. If both axes run at once, that must hold however the drives share the time: both at one rate, in
 * proportion, along a line in the other pair of coordinates, or along a great circle. If one of these comes too close,
 * one axis turns first.
 */
final class SlewOrder {
    private static final Angle STEP = Angle.ofDegrees(0.5);

    private final ObservingMoment moment;
    private final SunGuard sun;
    private final boolean hasPolarAxis;
    private double best = Double.POSITIVE_INFINITY;
    private List<Integer> bestOrder = List.of();

    private SlewOrder(ObservingMoment moment, MountKind kind) {
        this.moment = moment;
        this.sun = SunGuard.at(moment);
        this.hasPolarAxis = kind.hasPolarAxis();
    }

    /** The positions of both axes of the mount. */
    private record Axes(Angle lower, Angle upper) {}

    /** One star, by its index in the input, and the slew to it. */
    record Leg(int star, StarMove move) {}

    /**
     * The order; empty if none keeps away from the Sun.
     *
     * @param start the tube's direction; empty is home, along the axis or level toward north
     */
    static Optional<List<Leg>> of(
            ObservingMoment moment, MountKind kind, Optional<HourAnglePlace> start, List<HourAnglePlace> stars) {
        return new SlewOrder(moment, kind).shortest(start, stars);
    }

    private Optional<List<Leg>> shortest(Optional<HourAnglePlace> start, List<HourAnglePlace> stars) {
        List<Axes> places = new ArrayList<>(stars.stream().map(this::axes).toList());
        places.add(start.map(this::axes).orElseGet(this::home));
        int home = stars.size();
        StarMove[][] moves = new StarMove[home + 1][home];
        for (int from = 0; from <= home; from++) {
            for (int to = 0; to < home; to++) {
                moves[from][to] = from == to ? null : move(places.get(from), places.get(to));
            }
        }
        search(moves, home, new ArrayList<>(), 0);
        if (bestOrder.size() < home) {
            return Optional.empty();
        }
        List<Leg> legs = new ArrayList<>();
        int from = home;
        for (int to : bestOrder) {
            legs.add(new Leg(to, moves[from][to]));
            from = to;
        }
        return Optional.of(Collections.unmodifiableList(legs));
    }

    private void search(@Nullable StarMove[][] moves, int from, List<Integer> visited, double soFar) {
        int count = moves.length - 1;
        if (soFar >= best) {
            return;
        }
        if (visited.size() == count) {
            best = soFar;
            bestOrder = List.copyOf(visited);
            return;
        }
        for (int to = 0; to < count; to++) {
            StarMove move = moves[from][to];
            if (move != null && !visited.contains(to)) {
                visited.add(to);
                search(moves, to, visited, soFar + move.slower().radians());
                visited.remove(visited.size() - 1);
            }
        }
    }

    private @Nullable StarMove move(Axes from, Axes to) {
        Angle lower = to.lower().minus(from.lower());
        Angle upper = to.upper().minus(from.upper());
        for (StarMove.Order order : StarMove.Order.values()) {
            if (!sun.isSunUp() || isSafe(from, to, order)) {
                return new StarMove(lower, upper, order);
            }
        }
        return null;
    }

    private boolean isSafe(Axes from, Axes to, StarMove.Order order) {
        List<AirlessDirection> path = new ArrayList<>();
        switch (order) {
            case BOTH_TOGETHER -> {
                addTogether(path, from, to);
                return isFar(path)
                        && isFar(inProportion(from, to))
                        && isFar(inOtherCoordinates(direction(from), direction(to)))
                        && isFar(List.of(direction(from), direction(to)));
            }
            case LOWER_AXIS_FIRST -> {
                Axes corner = new Axes(to.lower(), from.upper());
                addTogether(path, from, corner);
                addTogether(path, corner, to);
            }
            case UPPER_AXIS_FIRST -> {
                Axes corner = new Axes(from.lower(), to.upper());
                addTogether(path, from, corner);
                addTogether(path, corner, to);
            }
        }
        return isFar(path);
    }

    private boolean isFar(List<AirlessDirection> path) {
        return sun.nearestOnPath(path).compareTo(SunGuard.KEEP_AWAY) >= 0;
    }

    /** Both axes in the same time from start to end. */
    private List<AirlessDirection> inProportion(Axes from, Axes to) {
        int steps = steps(from.lower(), to.lower(), from.upper(), to.upper());
        return IntStream.rangeClosed(0, steps)
                .mapToObj(step -> direction(new Axes(
                        between(from.lower(), to.lower(), step / (double) steps),
                        between(from.upper(), to.upper(), step / (double) steps))))
                .toList();
    }

    /** In proportion in azimuth and altitude on a polar axis, in hour angle and declination on an upright fork. */
    private List<AirlessDirection> inOtherCoordinates(AirlessDirection from, AirlessDirection to) {
        Axes begins = otherAxes(from);
        Axes ends = otherAxes(to);
        Angle lower = begins.lower().plus(ends.lower().minus(begins.lower()).wrappedSigned());
        int steps = steps(begins.lower(), lower, begins.upper(), ends.upper());
        return IntStream.rangeClosed(0, steps)
                .mapToObj(step -> {
                    double share = step / (double) steps;
                    Angle one = between(begins.lower(), lower, share);
                    Angle two = between(begins.upper(), ends.upper(), share);
                    return hasPolarAxis ? AirlessDirection.of(one, two) : moment.airless(new HourAnglePlace(one, two));
                })
                .toList();
    }

    private Axes otherAxes(AirlessDirection direction) {
        if (hasPolarAxis) {
            return new Axes(direction.azimuth(), direction.altitude());
        }
        HourAnglePlace place = moment.hourAngle(direction);
        return new Axes(place.hourAngle(), place.declination());
    }

    private static int steps(Angle lower, Angle otherLower, Angle upper, Angle otherUpper) {
        double longest = Math.max(
                otherLower.minus(lower).abs().radians(),
                otherUpper.minus(upper).abs().radians());
        return (int) Math.ceil(longest / STEP.radians()) + 1;
    }

    private static Angle between(Angle from, Angle to, double share) {
        return from.plus(to.minus(from).times(share));
    }

    /** Both axes at the same rate, the one with the shorter rotation stopping first. */
    private void addTogether(List<AirlessDirection> path, Axes from, Axes to) {
        Angle lower = to.lower().minus(from.lower());
        Angle upper = to.upper().minus(from.upper());
        double longest = Math.max(lower.abs().radians(), upper.abs().radians());
        int steps = (int) Math.ceil(longest / STEP.radians()) + 1;
        for (int i = 0; i <= steps; i++) {
            double turned = longest * i / steps;
            path.add(direction(new Axes(
                    from.lower().plus(upTo(lower, turned)), from.upper().plus(upTo(upper, turned)))));
        }
    }

    private static Angle upTo(Angle whole, double turnedRad) {
        return new Angle(Math.copySign(Math.min(whole.abs().radians(), turnedRad), whole.radians()));
    }

    private AirlessDirection direction(Axes axes) {
        return hasPolarAxis
                ? moment.airless(new HourAnglePlace(axes.lower(), axes.upper()))
                : AirlessDirection.of(axes.lower(), axes.upper());
    }

    private Axes axes(HourAnglePlace place) {
        if (hasPolarAxis) {
            return new Axes(place.hourAngle(), place.declination());
        }
        AirlessDirection direction = moment.airless(place);
        return new Axes(direction.azimuth().wrappedSigned(), direction.altitude());
    }

    private Axes home() {
        return hasPolarAxis
                ? new Axes(Angle.ZERO, Angle.QUARTER_TURN.times(moment.site().hemisphereSign()))
                : new Axes(Angle.ZERO, Angle.ZERO);
    }
}
