package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.FrameChecks;
import polewright.alignment.camera.InferredDrive;
import polewright.alignment.camera.PeriodicError;
import polewright.alignment.camera.TrackedSequence;
import polewright.mount.OffsetCovariance;
import polewright.report.text.FrameWords;
import polewright.sky.angle.Angle;

/** Results from camera frames as JSON. */
public final class FramesJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private FramesJson() {}

    /** The axis from frames between which right ascension was turned. */
    public static ObjectNode of(AxisFromFrames found, Drive told) {
        ObjectNode node = NODES.objectNode();
        node.put("east_arcmin", found.offset().east().arcminutes());
        node.put("up_arcmin", found.offset().up().arcminutes());
        node.put("azimuth_error_arcmin", found.axis().azimuthError(found.site()).arcminutes());
        OffsetCovariance covariance = found.covariance();
        ArrayNode rows = node.putArray("cov_arcmin2");
        rows.addArray().add(covariance.eastEastArcmin2()).add(covariance.eastUpArcmin2());
        rows.addArray().add(covariance.eastUpArcmin2()).add(covariance.upUpArcmin2());
        ArrayNode turns = node.putArray("rotation_deg");
        found.turnsBetween().forEach(turn -> turns.add(turn.degrees()));
        node.put("residual_arcsec", rms(found.residuals()));
        node.put("polar_distance_deg", found.boresightPolarDistance().degrees());
        InferredDrive drive = InferredDrive.of(found, told);
        node.put("drive", drive.drive().name().toLowerCase(Locale.ROOT));
        node.put("drive_seen", drive.seen());
        ArrayNode warnings = node.putArray("warnings");
        FrameChecks.of(found, told).forEach(finding -> warnings.add(FrameWords.of(finding)));
        return node;
    }

    /** Drift and periodic error. */
    public static ObjectNode of(TrackedSequence sequence) {
        ObjectNode node = NODES.objectNode();
        node.put("start", sequence.start().toString());
        node.put("minutes", sequence.length().toMillis() / 60000.0);
        node.put("ra_icrs_deg", sequence.rightAscension().degrees());
        node.put("dec_icrs_deg", sequence.declination().degrees());
        put(node, "north", sequence.north());
        put(node, "east", sequence.east());
        PeriodicError worm = sequence.worm();
        ObjectNode periodic = node.putObject("periodic_error");
        periodic.put("peak_to_peak_arcsec", equatorial(worm, worm.peakToPeak()));
        periodic.put("rms_arcsec", equatorial(worm, worm.rms()));
        worm.wave().ifPresent(wave -> {
            periodic.put("period_seconds", wave.period().toMillis() / 1000.0);
            periodic.put("amplitude_arcsec", equatorial(worm, wave.amplitude()));
            periodic.put("sigma_amplitude_arcsec", equatorial(worm, wave.amplitudeSigma()));
        });
        return node;
    }

    private static double rms(List<Angle> residuals) {
        double squares = residuals.stream()
                .mapToDouble(r -> r.arcseconds() * r.arcseconds())
                .sum();
        return Math.sqrt(squares / residuals.size());
    }

    private static void put(ObjectNode node, String way, TrackedSequence.Drift drift) {
        node.put(way + "_arcsec_min", drift.perMinute().arcseconds());
        node.put("sigma_" + way + "_arcsec_min", drift.sigmaPerMinute().arcseconds());
    }

    private static double equatorial(PeriodicError worm, Angle onSky) {
        return worm.atEquator(onSky).arcseconds();
    }
}
