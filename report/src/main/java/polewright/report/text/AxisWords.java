package polewright.report.text;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.FrameChecks;
import polewright.alignment.camera.InferredDrive;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The axis from frames, in words. */
public final class AxisWords {
    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm:ss 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private static final long IN_DEGREES_ARCSEC = 6000;
    private static final double FINEST_ARCSEC = 100;

    private AxisWords() {}

    /** One line per frame, numbered as in the notes. */
    public static List<String> frames(List<PlacedFrame> inOrder) {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < inOrder.size(); i++) {
            lines.add((i + 1) + ". " + frame(inOrder.get(i)));
        }
        return lines;
    }

    /** {@code night-001.fits, 20:00:10 UTC: 45 of 50 stars matched, centre to 0.4″}. */
    public static String frame(PlacedFrame placed) {
        return placed.name() + placed.at().map(at -> ", " + clock(at)).orElse("") + ": "
                + placed.match().starsMatched() + " of " + placed.match().starsFound() + " stars matched, centre to "
                + ArcsecondWords.of(placed.match().covariance().centreSigma()) + ".";
    }

    public static String clock(Instant at) {
        return CLOCK.format(at);
    }

    /** The axis, and the data it is based on. */
    public static List<String> of(AxisFromFrames found, Drive told) {
        List<String> lines = new ArrayList<>();
        lines.add(line(found));
        Site site = found.site();
        Angle azimuth = found.axis().azimuthError(site);
        Angle altitude = found.axis().altitudeError(site);
        lines.add("In azimuth and altitude: " + fine(azimuth)
                + (azimuth.radians() >= 0 ? " right" : " left") + ", " + fine(altitude)
                + (altitude.radians() >= 0 ? " high" : " low") + ".");
        lines.addAll(turned(found, told));
        return lines;
    }

    /** The same as one sighting among others, shown above the combined result. */
    public static List<String> ofFramesAlone(AxisFromFrames found, Drive told) {
        List<String> lines = new ArrayList<>();
        lines.add("Axis by these frames alone: " + offset(found) + ".");
        lines.addAll(turned(found, told));
        return lines;
    }

    /** The axis in one line. */
    public static String line(AxisFromFrames found) {
        return "Axis: " + offset(found) + ".";
    }

    private static String offset(AxisFromFrames found) {
        OffsetCovariance covariance = found.covariance();
        return direction(found.offset()) + " ("
                + FixWords.plusMinus(uncertainty(covariance.sigmaEast()), uncertainty(covariance.sigmaUp())) + ")";
    }

    /** No finer than an arcsecond, because mounts flex by that much, and in arcminutes when it is no longer small. */
    private static String uncertainty(Angle sigma) {
        double arcsec = sigma.arcseconds();
        return arcsec < 0.995 ? "1″" : arcsec < FINEST_ARCSEC ? ArcsecondWords.of(sigma) : AngleWords.size(sigma);
    }

    private static List<String> turned(AxisFromFrames found, Drive told) {
        List<String> lines = new ArrayList<>();
        lines.add("RA turned "
                + found.turnsBetween().stream()
                        .map(turn -> AngleWords.degrees(turn.abs()) + (turn.radians() >= 0 ? " westward" : " eastward"))
                        .collect(Collectors.joining(", then "))
                + agreement(found) + ".");
        lines.add(FrameWords.of(InferredDrive.of(found, told)));
        return lines;
    }

    /** What looks wrong. */
    public static List<String> notes(AxisFromFrames found, Drive told) {
        return FrameChecks.of(found, told).stream()
                .map(finding -> "NOTE  " + FrameWords.of(finding))
                .toList();
    }

    private static String agreement(AxisFromFrames found) {
        if (found.degreesOfFreedom() == 0) {
            return "";
        }
        double worst =
                found.residuals().stream().mapToDouble(Angle::arcseconds).max().orElse(0);
        return "; the frames agree to " + ArcsecondWords.of(Angle.ofArcseconds(worst));
    }

    /** Finer than the words for visual sightings: {@code 3′12″ east, 41″ low}. */
    static String direction(AxisOffset offset) {
        if (offset.distance().arcseconds() >= IN_DEGREES_ARCSEC) {
            return FixWords.direction(offset);
        }
        return fine(offset.east()) + FixWords.eastOrWest(offset) + ", " + fine(offset.up())
                + FixWords.highOrLow(offset);
    }

    /** {@code 4.1″}, {@code 3′12″}, {@code 2.4°}. */
    static String fine(Angle angle) {
        double arcsec = Math.abs(angle.arcseconds());
        if (arcsec < 59.5) {
            return ArcsecondWords.of(angle);
        }
        long whole = Math.round(arcsec);
        return whole >= IN_DEGREES_ARCSEC
                ? AngleWords.size(angle)
                : String.format(Locale.ROOT, "%d′%02d″", whole / 60, whole % 60);
    }
}
