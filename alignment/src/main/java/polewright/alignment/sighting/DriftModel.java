package polewright.alignment.sighting;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisPointing;
import polewright.sky.place.Site;
import polewright.sky.time.SiderealRate;

/**
 * The measurement model of a tracked star's drift.
 *
 * <p>Along the mount's north the drift is the change of declination in the mount's frame. Along the sky's north it is
 * the star's displacement from the centre of the view, which the drive rotates about the axis, along the line that was
 * on the sky's north at the start and rotated with the view. Both are exact, including refraction.
 */
public final class DriftModel implements AxisModel {
    private final Site site;
    private final Vector3D start;
    private final Vector3D end;
    private final double turnRad;
    // By Rodrigues' formula e · R v is cos (e·v) + sin k·(v × e) + (1 − cos) (k·e) (k·v): the parts independent of k
    // are stored.
    private final Vector3D north;
    private final double cosTurn;
    private final double sinTurn;
    private final double endAlongNorth;
    private final double endAlongStart;
    private final Vector3D northAcrossEnd;
    private final Vector3D startAcrossEnd;
    private final double measuredRad;
    private final double sigmaRad;
    private final ReticleNorth by;

    private DriftModel(
            Site site,
            Vector3D start,
            Vector3D end,
            double turnRad,
            double measuredRad,
            double sigmaRad,
            ReticleNorth by) {
        this.site = site;
        this.start = start;
        this.end = end;
        this.turnRad = turnRad;
        this.measuredRad = measuredRad;
        this.sigmaRad = sigmaRad;
        this.by = by;
        Vector3D pole = AxisPointing.atPole(site).northernEnd(site);
        north = pole.subtract(start.scalarMultiply(pole.dotProduct(start))).normalize();
        cosTurn = Math.cos(turnRad);
        sinTurn = Math.sin(turnRad);
        endAlongNorth = end.dotProduct(north);
        endAlongStart = end.dotProduct(start);
        northAcrossEnd = north.crossProduct(end);
        startAcrossEnd = start.crossProduct(end);
    }

    /**
     * A drift between two positions of a star.
     *
     * @param start ENU unit vector
     * @param end ENU unit vector
     * @param seconds between them
     * @param measuredRad northward, radians
     * @param sigmaRad radians
     */
    static DriftModel of(
            Site site,
            Vector3D start,
            Vector3D end,
            double seconds,
            double measuredRad,
            double sigmaRad,
            ReticleNorth by) {
        return new DriftModel(site, start, end, SiderealRate.during(seconds).radians(), measuredRad, sigmaRad, by);
    }

    /** Whether it is unknown which north it was read along. */
    public boolean isOpen() {
        return by == ReticleNorth.NOT_TOLD;
    }

    /** The same drift, read along that north. */
    public DriftModel readBy(ReticleNorth north) {
        return new DriftModel(site, start, end, turnRad, measuredRad, sigmaRad, north);
    }

    /** The difference of the two readings for a trial axis, in sigmas. */
    public double sigmasBetweenReadings(Vector3D elevatedEnd) {
        return Math.abs(alongMount(elevatedEnd) - alongSky(elevatedEnd)) / sigmaRad;
    }

    @Override
    public int size() {
        return 1;
    }

    /**
     * If it is unknown which north was meant, the drift is half-way between the two readings, with an uncertainty that
     * covers both.
     */
    @Override
    public double[] residual(Vector3D elevatedEnd) {
        return new double[] {
            switch (by) {
                case MOUNT -> (alongMount(elevatedEnd) - measuredRad) / sigmaRad;
                case SKY -> (alongSky(elevatedEnd) - measuredRad) / sigmaRad;
                case NOT_TOLD -> {
                    double mount = alongMount(elevatedEnd);
                    double sky = alongSky(elevatedEnd);
                    double half = (mount - sky) / 2;
                    yield ((mount + sky) / 2 - measuredRad) / Math.sqrt(sigmaRad * sigmaRad + half * half);
                }
            }
        };
    }

    private double alongMount(Vector3D axis) {
        return MountDeclination.radians(site, axis, end) - MountDeclination.radians(site, axis, start);
    }

    private double alongSky(Vector3D axis) {
        // The drive turns from east to west like the sky: a negative rotation about the northern end.
        Vector3D northEnd = axis.scalarMultiply(site.hemisphereSign());
        double together = (1 - cosTurn) * dot(northEnd, end);
        return Math.atan2(
                cosTurn * endAlongNorth - sinTurn * dot(northEnd, northAcrossEnd) + together * dot(northEnd, north),
                cosTurn * endAlongStart - sinTurn * dot(northEnd, startAcrossEnd) + together * dot(northEnd, start));
    }

    /** Called thousands of times per fix; unit vectors need no compensated sum. */
    private static double dot(Vector3D a, Vector3D b) {
        return a.getX() * b.getX() + a.getY() * b.getY() + a.getZ() * b.getZ();
    }
}
