package polewright.drawing.strip;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Plot;
import polewright.drawing.Scale;
import polewright.drawing.Sheet;
import polewright.drawing.Svg.Look;

/** Altitudes from level to the zenith, to the right along the horizon or through the night. */
record AltitudeStrip(Plot plot) {
    private static final double ZENITH_DEG = 90;

    static AltitudeStrip on(Sheet sheet, Box area, Scale across) {
        return new AltitudeStrip(new Plot(sheet, area, across, new Scale(0, ZENITH_DEG, area.bottom(), area.top())));
    }

    Sheet sheet() {
        return plot.sheet();
    }

    void altitudes(double stepDeg) {
        for (double altitude : plot.up().multiples(stepDeg)) {
            plot.level(sheet().grid(), altitude, Math.round(altitude) + "°");
        }
    }

    /**
     * The path of a star above the horizontal, split where it sets or wraps around from one end to the other.
     *
     * @param places to the right and altitude in degrees
     * @return all points drawn, on the paper
     */
    List<Vector2D> track(Look look, List<Vector2D> places) {
        List<Vector2D> drawn = new ArrayList<>();
        List<Vector2D> piece = new ArrayList<>();
        double half = (plot.across().high() - plot.across().low()) / 2;
        for (int i = 0; i < places.size(); i++) {
            Vector2D place = places.get(i);
            boolean isUp = place.getY() >= 0;
            boolean returns = i > 0 && Math.abs(place.getX() - places.get(i - 1).getX()) > half;
            if (!isUp || returns) {
                plot.curve(look, piece);
                piece.clear();
            }
            if (isUp) {
                piece.add(plot.at(place.getX(), place.getY()));
                drawn.add(piece.get(piece.size() - 1));
            }
        }
        plot.curve(look, piece);
        return drawn;
    }
}
