/**
 * What a coach would remark on: rules in a file, held against the measures of an attempt with their intervals.
 *
 * <p>{@code docs/observations.md} tells how rules work, what their guides rest on and what they cannot tell.
 */
package org.boardtopit.observations;
