package polewright.alignment.allowance;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Finds the zone of axis offsets that satisfies all of tonight's work, from site, rig and work.
 *
 * <pre>
 *   Work ─▶ ItemLimits: upper limits on motions, each exact for any axis
 *        ─▶ ShapedLimit: |A e + b| within the tolerance, an ellipse or a strip of offsets, plus second order
 *        ─▶ LeastUsedTolerance: a point inside all of them, or the items that leave none
 *        ─▶ ZoneOutline: the edge, moved to the exact limits
 *        ─▶ ConvexPolygon: its deepest point
 * </pre>
 */
public final class ZoneFinder {
    /**
     * The zone never extends farther, even if the work would tolerate it. A degree off, go-tos miss every eyepiece and
     * the motions are no longer linear in the offset (they depart from linearity by up to a sixtieth for each unit of
     * tan δ); and a compass and a level are enough to set a mount this well.
     */
    public static final Angle MOUNT_BOUND = Angle.ofArcminutes(60);

    /** Item name for edges set only by {@link #MOUNT_BOUND}. */
    public static final String ANY_MOUNT = "any mount";

    private static final MotionLimit MOUNT =
            new MotionLimit(ANY_MOUNT, LimitCause.MOUNT, new GoToOffset(), 0, MOUNT_BOUND.arcseconds());
    // Two limits whose used fractions have at least this ratio count as reached together.
    private static final double REACHED_TOGETHER = 0.95;

    private ZoneFinder() {}

    /**
     * The zone, or the reason why there is none. If three items together leave nothing though any two of them would
     * leave a zone, the two that are farthest apart are named.
     */
    public static ZoneOutcome find(Site site, Weather weather, Rig rig, Work work) {
        ApparentSky sky = new ApparentSky(site, weather);
        AxesAboutPole axes = AxesAboutPole.of(site);
        ShapedLimit mount = ShapedLimit.of(MOUNT, axes);
        List<List<ShapedLimit>> ofItems = new ArrayList<>();
        List<ShapedLimit> all = new ArrayList<>(List.of(mount));
        for (WorkItem item : work.items()) {
            List<ShapedLimit> ofItem = shaped(ItemLimits.of(sky, rig.drive(), item), axes);
            ofItems.add(ofItem);
            all.addAll(ofItem);
        }
        LeastUsedTolerance least = LeastUsedTolerance.of(all);
        if (least.share() < 1) {
            return new ZoneOutcome.Found(zone(site, work, all, least.point()));
        }
        for (int i = 0; i < ofItems.size(); i++) {
            LeastUsedTolerance alone = LeastUsedTolerance.of(with(mount, ofItems.get(i)));
            if (alone.share() >= 1) {
                WorkItem item = work.items().get(i);
                LimitCause cause = reasonAt(ofItems.get(i), alone.point()).cause();
                return new ZoneOutcome.Impossible(
                        item.name(), cause, LongestPossible.of(sky, rig.drive(), item, cause));
            }
        }
        return atOdds(mount, work, ofItems, least);
    }

    private static List<ShapedLimit> shaped(List<MotionLimit> limits, AxesAboutPole axes) {
        return limits.stream().map(limit -> ShapedLimit.of(limit, axes)).toList();
    }

    /** Whether some axis within the mount's bound satisfies them all. */
    static boolean canBeMet(List<MotionLimit> limits, AxesAboutPole axes) {
        return LeastUsedTolerance.of(with(ShapedLimit.of(MOUNT, axes), shaped(limits, axes)))
                        .share()
                < 1;
    }

    private static List<ShapedLimit> with(ShapedLimit mount, List<ShapedLimit> limits) {
        return Stream.concat(Stream.of(mount), limits.stream()).toList();
    }

    private static ZoneOutcome atOdds(
            ShapedLimit mount, Work work, List<List<ShapedLimit>> ofItems, LeastUsedTolerance together) {
        for (int i = 0; i < ofItems.size(); i++) {
            for (int j = i + 1; j < ofItems.size(); j++) {
                List<ShapedLimit> both = new ArrayList<>(with(mount, ofItems.get(i)));
                both.addAll(ofItems.get(j));
                if (LeastUsedTolerance.of(both).share() >= 1) {
                    return new ZoneOutcome.AtOdds(
                            work.items().get(i).name(), work.items().get(j).name());
                }
            }
        }
        // Rounding may leave only one of them: then the others follow, in the work's order, as the conflicting ones.
        List<String> pressing = Stream.concat(
                        together.binding().stream().map(limit -> limit.exact().item()),
                        work.items().stream().map(WorkItem::name))
                .filter(name -> !name.equals(ANY_MOUNT))
                .distinct()
                .toList();
        return new ZoneOutcome.AtOdds(pressing.get(0), pressing.get(1));
    }

    private static WorkZone zone(Site site, Work work, List<ShapedLimit> limits, Vector2D inside) {
        ZoneOutline outline = ZoneOutline.around(site, limits, inside);
        List<Vector2D> corners = outline.polygon().corners();
        List<ZoneEdge> edges = new ArrayList<>(corners.size());
        for (int i = 0; i < corners.size(); i++) {
            Vector2D from = corners.get(i);
            Vector2D to = corners.get((i + 1) % corners.size());
            MotionLimit limit = reasonAt(outline.limits(), from.add(to).scalarMultiply(0.5));
            edges.add(new ZoneEdge(offset(from), offset(to), limit.item(), limit.cause()));
        }
        Vector2D aim = outline.polygon().deepest();
        int nearest = outline.polygon().sideNearest(aim);
        return new WorkZone(
                work,
                edges,
                offset(aim),
                Angle.ofArcminutes(outline.polygon().depthOf(aim)),
                edges.get(nearest).item());
    }

    /**
     * The limit that forms the edge here. Among one item's limits that are reached almost together, the first cause is
     * named: if all stars trail, the corners are not worth mentioning.
     */
    private static MotionLimit reasonAt(List<ShapedLimit> limits, Vector2D point) {
        ShapedLimit worst = limits.get(0);
        double most = -1;
        for (ShapedLimit limit : limits) {
            double share = limit.share(point.getX(), point.getY());
            if (share > most) {
                most = share;
                worst = limit;
            }
        }
        MotionLimit reason = worst.exact();
        for (ShapedLimit limit : limits) {
            if (limit.exact().item().equals(reason.item())
                    && limit.exact().cause().compareTo(reason.cause()) < 0
                    && limit.share(point.getX(), point.getY()) >= REACHED_TOGETHER * most) {
                reason = limit.exact();
            }
        }
        return reason;
    }

    private static AxisOffset offset(Vector2D arcmin) {
        return AxisOffset.ofArcminutes(arcmin.getX(), arcmin.getY());
    }
}
