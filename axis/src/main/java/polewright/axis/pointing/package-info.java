/**
 * What a mount's reading has to be corrected by, learned from stars that were centred.
 *
 * <pre>
 *   CentredStar (as read) ──▶ Centring (two places) ──▶ PointingFit ──▶ PointingModel ──▶ go-to error, axis
 *                                                         ▲
 *                                    ForkModel: terms + reading ──▶ where the tube looks
 * </pre>
 */
@NullMarked
package polewright.axis.pointing;

import org.jspecify.annotations.NullMarked;
