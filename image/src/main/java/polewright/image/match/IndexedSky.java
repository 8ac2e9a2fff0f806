package polewright.image.match;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;

/**
 * The patterns of the whole sky, or of the part of it allowed by a hint.
 *
 * @param patch which part, including frames around its edge; the whole sky if empty
 * @param julianYear epoch of the stars
 * @param depth number of stars of the whole sky it reaches down to
 * @param patterns the index
 */
record IndexedSky(Optional<SkyPatch> patch, double julianYear, int depth, PatternIndex patterns) {
    // In half a year the fastest stars move by a few arcseconds, too little to affect a pattern.
    private static final double SAME_YEARS = 0.5;
    // A neighbourhood is indexed to at least this many stars, which costs a few hundredths of a second.
    private static final int LEAST_STARS = 25_000;
    private static final double FAINTEST_MAGNITUDE = 16;
    private static final double WIDEST_RAD = Math.toRadians(80);

    /** The whole sky to the atlas's faintest stars. */
    static IndexedSky whole(StarAtlas atlas, StoredPatterns stored, double julianYear) {
        return new IndexedSky(Optional.empty(), julianYear, atlas.size(), stored.at(julianYear));
    }

    /** The part allowed by a hint. */
    static IndexedSky of(StarAtlas atlas, MatchHint hint, Detections detections, int depth) {
        Optional<SkyPatch> patch = open(hint, detections);
        SkyPatch searched = patch.orElse(SkyPatch.aroundPole(true, Angle.ofDegrees(180)));
        StarField stars = atlas.starsWithin(
                searched.rightAscension(),
                searched.declination(),
                searched.radius(),
                FAINTEST_MAGNITUDE,
                hint.julianYear());
        int wanted = patch.isEmpty() ? depth : Math.max(LEAST_STARS, (int) Math.ceil(depth * share(searched)));
        int count = Math.min(stars.size(), wanted);
        PatternIndex index =
                new PatternIndex(new MappedStars(stars, count, searched.radius().radians()));
        int reached = count == stars.size() ? atlas.size() : depth;
        return new IndexedSky(patch, hint.julianYear(), reached, index);
    }

    /** The part searched with a hint, to at least this many stars of the whole sky. */
    SearchedSky searched(MatchHint hint, Detections detections, int wantedDepth) {
        Optional<SkyPatch> open = open(hint, detections);
        double share = open.map(IndexedSky::share).orElse(1.0);
        if (patch.isPresent()) {
            double part = Math.min(1, share / share(patch.get()));
            return new SearchedSky(patterns, Integer.MAX_VALUE, open, part * patterns.patternCount());
        }
        double least = open.isPresent() ? LEAST_STARS / share : 0;
        int below = (int) Math.min(patterns.sky().count(), Math.max(wantedDepth, least));
        return new SearchedSky(patterns, below, open, share * Math.min(below, patterns.patternCount()));
    }

    /** Whether it holds all that a search needs. */
    boolean serves(MatchHint hint, Detections detections, int wantedDepth) {
        return depth >= wantedDepth
                && Math.abs(julianYear - hint.julianYear()) < SAME_YEARS
                && (patch.isEmpty()
                        || open(hint, detections).filter(this::holds).isPresent());
    }

    private boolean holds(SkyPatch inner) {
        SkyPatch outer = patch.orElseThrow();
        double apart = Vector3D.angle(outer.direction(), inner.direction());
        return apart + inner.radius().radians() <= outer.radius().radians() + 1e-9;
    }

    /** Fraction of the whole sky. */
    private static double share(SkyPatch patch) {
        return (1 - Math.cos(patch.radius().radians())) / 2;
    }

    private static Optional<SkyPatch> open(MatchHint hint, Detections detections) {
        double margin = Math.min(
                WIDEST_RAD,
                Math.atan(detections.halfDiagonal() * hint.scale().most().radians()));
        return hint.near()
                .map(near -> new SkyPatch(
                        near.rightAscension(),
                        near.declination(),
                        new Angle(Math.min(Math.PI, near.radius().radians() + margin))));
    }
}
