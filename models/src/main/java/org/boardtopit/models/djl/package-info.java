/** Computes networks with the PyTorch engine of the Deep Java Library. The only package that knows that library. */
package org.boardtopit.models.djl;
