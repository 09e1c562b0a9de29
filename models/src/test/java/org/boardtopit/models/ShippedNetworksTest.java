package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.boardtopit.models.djl.TorchEngine;
import org.junit.jupiter.api.Test;

class ShippedNetworksTest {
    private final NetworkStore store = new NetworkStore(new TorchEngine());

    @Test
    void verifies() throws NetworkUnfitException {
        System.out.println(store.list());
        System.out.println(store.verify("full", 2));
        System.out.println(store.verify("detector", 1));
        System.out.println(store.time("full", 1, 200).picturesPerSecond());
        System.out.println(store.time("full", 2, 200).picturesPerSecond());
        System.out.println(store.time("detector", 1, 200).picturesPerSecond());
        try (PersonDetector d = store.openDetector("detector")) {
            for (String n : d.card().references()) {
                System.out.println(n
                        + d.find(NetworkReference.read(NetworkFiles.shipped("detector"), d.card(), n)
                                .rgb()));
            }
        }
        assertEquals(1, 1);
    }
}
