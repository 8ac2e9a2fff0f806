package polewright.mount.pointing;

/**
 * A way in which one centring may have been written down wrongly, by which it would fit the others.
 *
 * @param index of the centring among all, from 0
 * @param cause in words that complete "it would fit if …"
 * @param meant the centring as it should have been written
 * @param square how much it would still surprise, χ² of 2 degrees of freedom
 */
public record CentringMistake(int index, String cause, CentredStar meant, double square) {}
