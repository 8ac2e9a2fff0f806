package polewright.sky.place;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * The location of the telescope: geodetic coordinates on WGS84.
 *
 * @param latitude north positive, −90° to 90°
 * @param longitude east positive, wrapped to [−180°, 180°)
 * @param heightMetres above the ellipsoid, −500 m to 9000 m; mean sea level is near enough
 */
public record Site(Angle latitude, Angle longitude, double heightMetres) {
    public Site {
        if (!(Math.abs(latitude.degrees()) <= 90 + 1e-9)) {
            throw new InputRefused(
                    "latitude " + PlainNumber.asTyped(latitude.degrees()) + " is beyond 90 degrees",
                    "give degrees from -90 (south) to 90 (north), latitude before longitude");
        }
        if (!(Math.abs(longitude.degrees()) <= 360)) {
            throw new InputRefused(
                    "longitude " + PlainNumber.asTyped(longitude.degrees()) + " is beyond 360 degrees",
                    "give degrees, east positive, from -180 to 180");
        }
        if (!(heightMetres >= -500 && heightMetres <= 9000)) {
            throw new InputRefused(
                    "height " + PlainNumber.asTyped(heightMetres) + " m is outside -500 to 9000 m",
                    "give metres above sea level");
        }
        longitude = longitude.wrappedSigned();
    }

    public static Site ofDegrees(double latitudeDeg, double longitudeEastDeg, double heightMetres) {
        return new Site(Angle.ofDegrees(latitudeDeg), Angle.ofDegrees(longitudeEastDeg), heightMetres);
    }

    public boolean isNorthern() {
        return latitude.radians() >= 0;
    }

    /** +1 where the north pole is above the horizon (the equator counts as north), −1 where the south pole is. */
    public int hemisphereSign() {
        return isNorthern() ? 1 : -1;
    }

    /** True altitude of the elevated pole; never negative. */
    public Angle poleAltitude() {
        return latitude.abs();
    }

    /** Azimuth of the elevated pole: 0 in the north, 180° in the south. */
    public Angle poleAzimuth() {
        return isNorthern() ? Angle.ZERO : Angle.HALF_TURN;
    }
}
