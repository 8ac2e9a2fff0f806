package polewright.mount.pointing;

/**
 * A mistake in one centring that would explain why it does not fit the others.
 *
 * @param index of the centring among all, from 0
 * @param cause in words that complete "it would fit if …"
 * @param meant the corrected centring
 * @param square its remaining deviation, χ² with 2 degrees of freedom
 */
public record CentringMistake(int index, String cause, CentredStar meant, double square) {}
