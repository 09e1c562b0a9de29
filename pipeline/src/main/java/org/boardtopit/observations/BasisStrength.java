package org.boardtopit.observations;

import org.boardtopit.clips.Label;

/**
 * What a guide rests on. The weights are ours, not measured: they say in which order we would believe the sources.
 */
public enum BasisStrength implements Label {
    /** A published study whose text was read. */
    STUDY("study", 1.0),
    /** The list of a training centre, read. */
    CENTRE("centre", 0.9),
    /** Common practice of coaches, without a source. */
    PRACTICE("practice", 0.75),
    /** A publication as remembered, not read again. */
    MEMORY("memory", 0.6);

    private final String label;
    private final double weight;

    BasisStrength(String label, double weight) {
        this.label = label;
        this.weight = weight;
    }

    @Override
    public String label() {
        return label;
    }

    /** How much it counts, 0 to 1. */
    double weight() {
        return weight;
    }
}
