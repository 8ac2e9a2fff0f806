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
 * @param facts what the file says of it
 * @param at middle of the exposure, as told or by the file
 * @param rows how the picture is drawn
 * @param decoding how its file was read, to be read so again
 * @param stars all that were found
 * @param match what they are
 * @param took to decode, find and match
 * @param remarks what the person should know of how it was found
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

    /** Of its file, without the folder. */
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
        // Toward smaller rows, unless the first is drawn at the bottom.
        int sign = rows == RowOrder.BOTTOM_UP ? -1 : 1;
        Vector3D up = plate.toSky(x, y - 0.5).subtract(plate.toSky(x, y + 0.5)).scalarMultiply(sign);
        double ra = plate.rightAscension().radians();
        double dec = plate.declination().radians();
        Vector3D east = new Vector3D(-Math.sin(ra), Math.cos(ra), 0);
        Vector3D north = new Vector3D(-Math.sin(dec) * Math.cos(ra), -Math.sin(dec) * Math.sin(ra), Math.cos(dec));
        return new Angle(Math.atan2(up.dotProduct(east), up.dotProduct(north))).wrappedPositive();
    }

    /** Sky along the width of the picture at its middle. */
    public Angle fieldWidth() {
        Plate plate = match.plate();
        double y = (plate.height() - 1) / 2.0;
        return new Angle(Vector3D.angle(plate.toSky(-0.5, y), plate.toSky(plate.width() - 0.5, y)));
    }

    /** Sky along the height of the picture at its middle. */
    public Angle fieldHeight() {
        Plate plate = match.plate();
        double x = (plate.width() - 1) / 2.0;
        return new Angle(Vector3D.angle(plate.toSky(x, -0.5), plate.toSky(x, plate.height() - 0.5)));
    }
}
