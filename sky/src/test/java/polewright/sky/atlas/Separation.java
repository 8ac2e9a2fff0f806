package polewright.sky.atlas;

import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

/** The angular separation of two positions, for assertions. */
final class Separation {
    private Separation() {}

    static double arcsec(CatalogueStar a, CatalogueStar b) {
        return arcsec(a.rightAscension(), a.declination(), b.rightAscension(), b.declination());
    }

    static double arcsec(Angle ra1, Angle dec1, Angle ra2, Angle dec2) {
        double sinDec = dec2.minus(dec1).times(0.5).sin();
        double sinRa = ra2.minus(ra1).times(0.5).sin();
        double haversine = sinDec * sinDec + dec1.cos() * dec2.cos() * sinRa * sinRa;
        return Angle.ofRadians(2 * Math.asin(Math.sqrt(haversine))).arcseconds();
    }
}
