"""python3 -m unittest -v (in this folder). Small cases, checked by hand or by formula."""
import io
import math
import unittest
import zipfile

import numpy as np
import torch

import convert
import heatmap
import network


class SamePadding(unittest.TestCase):
    def test_puts_the_odd_pixel_at_the_end(self):
        self.assertEqual(network.same_padding(8, 3, 2), (0, 1))
        self.assertEqual(network.same_padding(8, 3, 1), (1, 1))
        self.assertEqual(network.same_padding(8, 5, 2), (1, 2))
        self.assertEqual(network.same_padding(8, 1, 1), (0, 0))


class WeightOrder(unittest.TestCase):
    def test_goes_back_to_the_files_order(self):
        file_order = np.arange(2 * 3 * 3 * 4).reshape(2, 3, 3, 4)
        torch_order = file_order.transpose(0, 3, 1, 2).reshape(-1)
        np.testing.assert_array_equal(convert.channels_last(torch_order, (2, 3, 3, 4), "CONV_2D"), file_order)

    def test_goes_back_to_the_files_order_of_depthwise_weights(self):
        file_order = np.arange(3 * 3 * 4).reshape(1, 3, 3, 4)
        torch_order = file_order.transpose(3, 0, 1, 2).reshape(-1)
        np.testing.assert_array_equal(convert.channels_last(torch_order, (1, 3, 3, 4), "DEPTHWISE_CONV_2D"), file_order)


class HeatMapReading(unittest.TestCase):
    def test_reads_two_gaussians(self):
        rows, columns = np.indices((64, 64))
        x, y = (columns + 0.5) * 4, (rows + 0.5) * 4
        share = sum(
            mass * np.exp(-((x - cx) ** 2 + (y - cy) ** 2) / 50) for cx, cy, mass in ((60, 120, 0.3), (180, 90, 0.7))
        )
        found = heatmap.read_points(np.log(share + 1e-12)[None], 4.0)[0]
        np.testing.assert_allclose(found, [180, 90, 3, 0.7, 60, 120, 3, 0.3], rtol=0.01)


class Archive(unittest.TestCase):
    def test_keeps_content_and_drops_times_and_debug_entries(self):
        first, second = (convert.reproducible_archive(archive(year)) for year in (1999, 2020))
        self.assertEqual(first, second)
        with zipfile.ZipFile(io.BytesIO(first)) as result:
            self.assertEqual(result.namelist(), ["archive/data.pkl"])
            self.assertEqual(result.read("archive/data.pkl"), b"data")


def archive(year: int) -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as target:
        target.writestr(zipfile.ZipInfo("archive/data.pkl", (year, 1, 1, 0, 0, 0)), b"data")
        target.writestr(zipfile.ZipInfo("archive/code.py.debug_pkl", (year, 1, 1, 0, 0, 0)), str(year))
    return buffer.getvalue()


class Preprocessing(unittest.TestCase):
    def test_bytes_become_the_ranges_that_the_graphs_want(self):
        class Echo(torch.nn.Module):
            def __init__(self, copies):
                super().__init__()
                self.one, self.copies = torch.nn.Parameter(torch.ones(1)), copies

            def forward(self, x):
                return (x.permute(0, 3, 1, 2),) * self.copies

        x = torch.tensor([0, 255, 51], dtype=torch.uint8).reshape(1, 1, 1, 3)
        landmarks = convert.LandmarkNetwork(Echo(1))(x)
        boxes, _ = convert.DetectorNetwork(Echo(2))(x)
        for found, expected in zip(landmarks.flatten().tolist(), (0, 1, 0.2)):
            self.assertTrue(math.isclose(found, expected, abs_tol=1e-6))
        for found, expected in zip(boxes.flatten().tolist(), (-1, 1, -0.6)):
            self.assertTrue(math.isclose(found, expected, abs_tol=1e-6))


if __name__ == "__main__":
    unittest.main()
