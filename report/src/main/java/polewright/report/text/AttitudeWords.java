package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.image.match.MatchedFrame;
import polewright.image.match.Plate;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.angle.Angle;
import polewright.sky.angle.Sexagesimal;
import polewright.sky.place.RefractedDirection;

/** The attitude of a frame in words. */
public final class AttitudeWords {
    private AttitudeWords() {}

    /** A few lines: direction, orientation and uncertainty. */
    public static List<String> of(PlacedFrame placed, Optional<RefractedDirection> stood) {
        List<String> lines = new ArrayList<>();
        MatchedFrame match = placed.match();
        Plate plate = match.plate();
        lines.add(String.format(
                Locale.ROOT,
                "%s is centred on right ascension %s, declination %s (ICRS; %.4f, %+.4f degrees) ±%s.",
                placed.name(),
                Sexagesimal.hours(plate.rightAscension(), 1),
                Sexagesimal.degrees(plate.declination(), 0),
                plate.rightAscension().degrees(),
                plate.declination().degrees(),
                ArcsecondWords.of(match.covariance().centreSigma())));
        lines.add(String.format(
                Locale.ROOT,
                "Up in the frame is position angle %.1f° (from north through east). Field %s by %s, %s per pixel%s.",
                Math.rint(placed.rollAsDrawn().degrees() * 10) / 10 % 360,
                AngleWords.size(placed.fieldWidth()),
                AngleWords.size(placed.fieldHeight()),
                ArcsecondWords.of(plate.scale()),
                placed.mirroredAsDrawn() ? ", mirrored" : ""));
        stood.ifPresent(direction -> lines.add("It was at azimuth " + AngleWords.bearing(direction.azimuth()) + " ("
                + AngleWords.compassPoint(direction.azimuth()) + "), " + AngleWords.degrees(direction.altitude())
                + " up."));
        lines.add(String.format(
                Locale.ROOT,
                "%d of %d stars matched, %s RMS.",
                match.starsMatched(),
                match.starsFound(),
                ArcsecondWords.of(Angle.ofArcseconds(match.rmsArcsec()))));
        return lines;
    }
}
