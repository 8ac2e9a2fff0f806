package polewright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.rig.Rig;
import polewright.planning.tonight.Evening;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Positions of the Sun by an independent ephemeris: see authorities/sun-places/README.md. */
final class SunPlaces {
    private SunPlaces() {}

    /** Sunset and sunrise of a night. */
    record Night(Instant sunset, Instant sunrise) {}

    /**
     * One site at one time.
     *
     * @param sun centre of the disc, airless
     * @param mercuryDeg angular distance from the Sun's centre to Mercury
     * @param venusDeg angular distance from the Sun's centre to Venus
     * @param night given for one site per random date, and for all sites per eclipse
     */
    record Row(
            boolean isEclipse,
            Site site,
            Instant at,
            AirlessDirection sun,
            double mercuryDeg,
            double venusDeg,
            Optional<Night> night) {
        /** Upper limb at the almanacs' horizon. */
        boolean isSunUp() {
            return sun.altitude().degrees() > -50 / 60.0;
        }

        /** Degrees from the limb, for the largest apparent disc. */
        double fromEdgeDeg(AirlessDirection direction) {
            return Math.toDegrees(Vector3D.angle(sun.enu(), direction.enu())) - 0.272;
        }

        Evening evening(Rig rig) {
            return Evening.at(site, Weather.standardAt(site.heightMetres()), rig, Horizon.OPEN, at, Optional.empty());
        }

        String siteOption() {
            return site.latitude().degrees() + "," + site.longitude().degrees() + "," + site.heightMetres();
        }

        @Override
        public String toString() {
            return at + " at " + siteOption();
        }
    }

    static List<Row> all() {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                SunPlaces.class.getResourceAsStream("/authorities/sun-places/sun.csv"), StandardCharsets.UTF_8))) {
            return reader.lines().skip(1).map(SunPlaces::row).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Row row(String line) {
        String[] cells = line.split(",", -1);
        return new Row(
                cells[1].equals("eclipse"),
                Site.ofDegrees(number(cells[2]), number(cells[3]), number(cells[4])),
                Instant.parse(cells[5]),
                AirlessDirection.of(Angle.ofDegrees(number(cells[8])), Angle.ofDegrees(number(cells[9]))),
                number(cells[10]),
                number(cells[11]),
                cells[12].isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Night(Instant.parse(cells[12]), Instant.parse(cells[14]))));
    }

    private static double number(String cell) {
        return Double.parseDouble(cell);
    }
}
