package polewright.operations.camera;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.FrameFacts;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.RowOrder;
import polewright.image.match.MatchedFrame;
import polewright.image.match.Plate;
import polewright.image.star.StarList;
import polewright.sky.angle.Angle;

/**
 * A frame whose place in the sky is known.
 *
 * @param file that it is in
 * @param facts from the file
 * @param at middle of the exposure, as given or from the file
 * @param rows the row order in which the picture is drawn
 * @param decoding how its file was read, to read it again in the same way
 * @param stars all detected stars
 * @param match which of them were identified
 * @param took time to decode, detect and match
 * @param remarks notes for the observer on how it was matched
 */
public record PlacedFrame(
        Path file,
        FrameFacts facts,
        Optional<Instant> at,
        RowOrder rows,
        DecodeOptions decoding,
        StarList stars,
        MatchedFrame match,
        Duration took,
        List<String> remarks) {
    public PlacedFrame {
        remarks = List.copyOf(remarks);
    }

    /** File name without the folder. */
    public String name() {
        return FrameFile.nameOf(file);
    }

    /** Whether left and right are exchanged in the picture as it is drawn. */
    public boolean mirroredAsDrawn() {
        return rows.flips(match.plate().mirrored());
    }

    /** Position angle of the drawn picture's up at its centre, from north through east, [0°, 360°). */
    public Angle rollAsDrawn() {
        Plate plate = match.plate();
        double x = (plate.width() - 1) / 2.0;
        double y = (plate.height() - 1) / 2.0;
        // Toward smaller rows, unless the first row is drawn at the bottom.
        int sign = rows == RowOrder.BOTTOM_UP ? -1 : 1;
        Vector3D up = plate.toSky(x, y - 0.5).subtract(plate.toSky(x, y + 0.5)).scalarMultiply(sign);
        double ra = plate.rightAscension().radians();
        double dec = plate.declination().radians();
        Vector3D east = new Vector3D(-Math.sin(ra), Math.cos(ra), 0);
        Vector3D north = new Vector3D(-Math.sin(dec) * Math.cos(ra), -Math.sin(dec) * Math.sin(ra), Math.cos(dec));
        return new Angle(Math.atan2(up.dotProduct(east), up.dotProduct(north))).wrappedPositive();
    }

    /** Angular width of the field through its centre. */
    public Angle fieldWidth() {
        Plate plate = match.plate();
        double y = (plate.height() - 1) / 2.0;
        return new Angle(Vector3D.angle(plate.toSky(-0.5, y), plate.toSky(plate.width() - 0.5, y)));
    }

    /** Angular height of the field through its centre. */
    public Angle fieldHeight() {
        Plate plate = match.plate();
        double x = (plate.width() - 1) / 2.0;
        return new Angle(Vector3D.angle(plate.toSky(x, -0.5), plate.toSky(x, plate.height() - 0.5)));
    }
}
