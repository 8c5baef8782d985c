"""Photographs against OpenCV and scipy, and on simulated vehicles."""

from dataclasses import replace
from math import hypot, radians, sqrt

import cv2
import numpy as np
import pytest
from scipy.optimize import least_squares

from core.adjustment.bundle import MissingMark, NoCamera
from core.adjustment.camera import project
from core.adjustment.outliers import suspect_groups
from core.readings.photograph import CONTACTS, HUBS, OWN_POINTS, Mark
from core.readings.reading import Reading, standard_uncertainty
from tests.geometries import INCH, INSTRUMENTS
from tests.photographed import (
    CASES,
    EVERYTHING,
    F35,
    FOCAL,
    HEIGHT,
    HEIGHTS,
    PIVOTS,
    STATIONS,
    VIEWS,
    WIDTH,
    WITH_WHEELS,
    Camera,
    adjust,
    coverage,
    drawn_camera,
    drawn_vehicle,
    looking_at,
    parallel,
    parallel_and_u,
    photograph,
    photographed,
)


def rotation(yaw: float, pitch: float, roll: float) -> np.ndarray:
    """Rotation to right, down, forward by the definition of the angles, with OpenCV's turns."""
    level = np.array([[0.0, 1.0, 0.0], [0.0, 0.0, -1.0], [-1.0, 0.0, 0.0]])
    about_up, about_right, about_axis = (
        cv2.Rodrigues(np.array(turn))[0]
        for turn in ([0.0, 0.0, -yaw], [-pitch, 0.0, 0.0], [0.0, 0.0, roll])
    )
    return about_axis @ about_right @ level @ about_up


def opencv_camera(unknowns: np.ndarray) -> Camera:
    """OpenCV's camera with the ten unknowns of core."""
    return Camera(
        unknowns[:3], rotation(*unknowns[3:6]), unknowns[6], unknowns[7], tuple(unknowns[8:])
    )


def drawn_unknowns(rng: np.random.Generator) -> np.ndarray:
    place = np.array([2500, 0, 600]) + rng.normal(0, 400, 3)
    aim = rng.normal(0, [0.2, 0.15, 0.05])
    return np.array([*place, *aim, rng.uniform(2000, 4000), rng.normal(0, 0.02), 30, -20])


class TestCamera:
    @pytest.mark.parametrize("seed", range(20))
    def test_pictures_are_those_of_opencv(self, seed):
        """cv2.projectPoints, documented as the pinhole with radial terms (OpenCV, calib3d)."""
        rng = np.random.default_rng(seed)
        unknowns, points = drawn_unknowns(rng), rng.normal([0, 0, 450], 300, (12, 3))
        ours = project(np.tile(unknowns, (12, 1)), points).pixels
        ours = ours + np.array([WIDTH / 2, HEIGHT / 2])
        np.testing.assert_allclose(ours, opencv_camera(unknowns).pixels(points), atol=1e-7)

    def test_derivatives_are_those_of_differences(self):
        rng = np.random.default_rng(3)
        unknowns, points = drawn_unknowns(rng), rng.normal([0, 0, 450], 300, (12, 3))
        seen = project(np.tile(unknowns, (12, 1)), points)
        for i, step in enumerate(np.diag([0.1] * 3 + [1e-4] * 3 + [0.1, 1e-4, 0.1, 0.1])):
            ends = [opencv_camera(unknowns + sign * step).pixels(points) for sign in (1, -1)]
            difference = (ends[0] - ends[1]) / (2 * step[i])
            np.testing.assert_allclose(seen.by_camera[:, :, i], difference, rtol=1e-5, atol=1e-4)
        for i, step in enumerate(0.1 * np.eye(3)):
            ends = [opencv_camera(unknowns).pixels(points + sign * step) for sign in (1, -1)]
            difference = (ends[0] - ends[1]) / 0.2
            np.testing.assert_allclose(seen.by_point[:, :, i], difference, atol=1e-4)

    def test_the_camera_of_a_known_rectangle_is_that_of_solve_pnp(self):
        """cv2.solvePnP places a camera by four known points (OpenCV, calib3d)."""
        rng = np.random.default_rng(4)
        for _ in range(20):
            unknowns = drawn_unknowns(rng)
            unknowns[7:] = 0.0
            corners = np.array([[0, y, z] for y in (-780.0, 780.0) for z in (0.0, 410.0)])
            pictures = project(np.tile(unknowns, (4, 1)), corners).pixels
            matrix = np.diag([unknowns[6], unknowns[6], 1.0])
            _, turns, shifts, _ = cv2.solvePnPGeneric(
                corners, pictures, matrix, None, flags=cv2.SOLVEPNP_IPPE
            )
            places = [
                -cv2.Rodrigues(turn)[0].T @ shift.ravel()
                for turn, shift in zip(turns, shifts, strict=True)
            ]
            nearest = min(np.abs(place - unknowns[:3]).max() for place in places)
            assert nearest < 1e-3  # mm


class TestAgainstScipy:
    def residuals(self, pictures, points, readings, u_marks):
        """Weighted residuals by the priors of the specification, with OpenCV's camera."""
        place = {name: i for i, name in enumerate(points)}
        marks = [(i, each, mark) for i, each in enumerate(pictures) for mark in each.marks]

        def of(unknowns):
            at = unknowns[: 3 * len(points)].reshape(-1, 3) / INCH
            r = []
            for pivot in PIVOTS:
                x, y, z = at[place[pivot]]
                for value, (usual, within) in (
                    (z, HEIGHTS[pivot]),
                    (y, (0, 30)),
                    (x, STATIONS[pivot]),
                ):
                    r.append((value - usual) / within * sqrt(3))
            (xl, yl, zl), (xr, yr, zr) = (at[place[hub]] for hub in HUBS)
            r += [xl / 0.25 * sqrt(3), xr / 0.25 * sqrt(3), ((zl + zr) / 2 - 16) * sqrt(3)]
            r += [(zl - zr) / 0.5 * sqrt(3), (yl - yr - 62) / 4 * sqrt(3)]
            r += [(yl + yr) / 2 * INCH / 0.01 * sqrt(3)]
            for contact, y_hub in zip(CONTACTS, (yl, yr), strict=True):
                x, y, z = at[place[contact]]
                r += [x * sqrt(3), (y - y_hub) * sqrt(3), z / 0.25 * sqrt(3)]
            for reading in readings:
                ends = [
                    at[place[f"{reading.name.split('.')[0]}.{end}"]] for end in ("frame", "axle")
                ]
                length = np.linalg.norm(ends[0] - ends[1]) * INCH
                r.append((length - reading.value) / standard_uncertainty(reading, INSTRUMENTS))
            cameras = unknowns[3 * len(points) :].reshape(-1, 10)
            usual = np.array([2500, 0, 16 * INCH, 0, 0, 0, FOCAL, 0, 0, 0])
            aim = [radians(20), radians(15), radians(5)]
            shift = 0.01 * WIDTH
            within = np.array([3000] * 3 + aim + [0.05 * FOCAL, 0.03, shift, shift])
            r += list(((cameras - usual) / within * sqrt(3)).ravel())
            models = [opencv_camera(camera) for camera in cameras]
            seen = [models[i].pixels(at[place[mark.point]] * INCH)[0] for i, _, mark in marks]
            marked = [(mark.across, mark.down) for _, _, mark in marks]
            r += list(((np.array(seen) - marked) / u_marks[:, None]).ravel())
            return np.array(r)

        return of

    @pytest.mark.parametrize("seed", range(50))
    def test_the_minimum_is_that_of_least_squares(self, seed):
        """scipy.optimize.least_squares on the same sum of squares, with differences."""
        rng = np.random.default_rng(seed)
        vehicle, pictures = photographed(rng, 1 + seed % 2)
        readings = ()
        if seed % 3 == 0:
            length = np.linalg.norm(vehicle["drag_link.frame"] - vehicle["drag_link.axle"])
            readings = (Reading("drag_link.length", "length", (float(length),)),)
        ours = adjust(pictures, readings)
        network = ours.network
        u_marks = np.array([mark.u for mark in ours.marks])
        residuals = self.residuals(pictures, network.points, readings, u_marks)
        u = np.sqrt(np.diag(network.cofactor))
        start = network.unknowns + 0.3 * u * rng.normal(size=len(u))
        theirs = least_squares(
            residuals, start, x_scale=u, xtol=1e-14, ftol=1e-14, gtol=1e-12, max_nfev=40
        )
        assert 2 * theirs.cost == pytest.approx(ours.chi_square, rel=1e-6)
        moved = np.abs(theirs.x - network.unknowns) / u
        assert moved.max() < 1e-3
        covariance = np.linalg.inv(theirs.jac.T @ theirs.jac)
        np.testing.assert_allclose(np.sqrt(np.diag(covariance)), u, rtol=1e-2)

    def test_the_uncertainty_of_a_mark_grows_near_the_camera(self):
        rng = np.random.default_rng(1)
        _, pictures = photographed(rng, 1)
        ours = adjust(pictures)
        camera = ours.cameras[0]
        for mark in ours.marks:
            away = np.linalg.norm(ours.network.place(mark.point) - camera.place)
            sighting = camera.focal * INSTRUMENTS.sighting / away
            assert mark.u == pytest.approx(hypot(0.002 * WIDTH, sighting) / sqrt(3), rel=0.03)


class TestOnSimulatedVehicles:
    def test_the_truth_is_covered(self):
        """In 93 to 97 of 100, with room for chance; `python -m tests.photographed` draws 500."""
        figures = [coverage(60, *CASES[name], seed=7) for name in list(CASES)[1:]]
        covered = np.mean([each.covered for each in figures])
        assert 0.92 <= covered <= 0.99
        assert np.mean([each.false_calls for each in figures]) < 0.05
        assert np.mean([each.refused for each in figures]) < 0.05

    def test_more_photographs_and_more_in_view_leave_less_doubt(self):
        links, wheels, two, three = (
            coverage(20, count, in_view).u
            for count, in_view in (
                (1, PIVOTS),
                (1, WITH_WHEELS),
                (2, WITH_WHEELS),
                (3, WITH_WHEELS),
            )
        )
        assert links > wheels > two > three
        assert radians(0.2) < three < radians(0.4)

    def test_a_camera_elsewhere_gives_the_same_vehicle(self):
        """Moving or turning the camera changes nothing within the doubt."""
        rng = np.random.default_rng(11)
        vehicle = drawn_vehicle(rng)
        truth = parallel([vehicle[pivot] for pivot in PIVOTS])
        for _ in range(20):
            cameras = [drawn_camera(rng, view) for view in VIEWS[:2]]
            pictures = [
                photograph(number, camera, vehicle, WITH_WHEELS)
                for number, camera in enumerate(cameras, start=1)
            ]
            value, u = parallel_and_u(adjust(pictures))
            assert abs(value - truth) < 2 * u

    @pytest.mark.parametrize("seed", range(12))
    def test_a_mark_wrong_by_60_pixels_is_named(self, seed):
        rng = np.random.default_rng(seed)
        _, pictures = photographed(rng, 4, EVERYTHING)
        place = rng.integers(4)
        marks = list(pictures[place].marks)
        i = [mark.point for mark in marks].index(rng.choice(WITH_WHEELS))
        turn = rng.uniform(0, 2 * np.pi)
        marks[i] = replace(
            marks[i],
            across=marks[i].across + 60 * np.cos(turn),
            down=marks[i].down + 60 * np.sin(turn),
        )
        wrong = [
            replace(each, marks=tuple(marks)) if n == place else each
            for n, each in enumerate(pictures)
        ]
        name = pictures[place].name_of(marks[i])
        adjustment = adjust(wrong)
        groups = suspect_groups(adjustment)
        assert name in groups[0].readings
        mistake = groups[0].mistakes[groups[0].readings.index(name)]
        assert mistake == pytest.approx(60, abs=30)
        assert not adjustment.closes

    def test_a_length_of_the_tape_sets_the_scale(self):
        rng = np.random.default_rng(5)
        vehicle, pictures = photographed(rng, 2)
        length = float(np.linalg.norm(vehicle["track_bar.frame"] - vehicle["track_bar.axle"]))
        read = Reading("track_bar.length", "length", (length,))
        without, with_tape = adjust(pictures), adjust(pictures, [read])

        def u_of_link(adjustment):
            row = np.zeros(12)
            along = adjustment.points[2] - adjustment.points[3]
            row[6:9] = along / np.linalg.norm(along)
            row[9:12] = -row[6:9]
            return sqrt(row @ adjustment.covariance @ row)

        assert u_of_link(with_tape) < 0.7 * u_of_link(without)
        angles = parallel_and_u(without), parallel_and_u(with_tape)
        assert angles[0][1] == pytest.approx(angles[1][1], rel=0.15)

    def test_tape_and_marks_agree_about_a_vehicle_with_a_datum_line(self):
        rng = np.random.default_rng(6)
        vehicle, pictures = photographed(rng, 2)
        datum = 900.0
        readings = [
            Reading(f"{pivot}.{kind}", kind, (float(value),))
            for pivot in PIVOTS[:2]
            for kind, value in (
                ("height", vehicle[pivot][2]),
                ("offset", datum - vehicle[pivot][1]),
            )
        ]
        adjustment = adjust(pictures, readings)
        assert adjustment.closes
        truth = np.array([vehicle[pivot] - [0, datum, 0] for pivot in PIVOTS])
        u = np.sqrt(np.diag(adjustment.covariance)).reshape(-1, 3)
        assert (np.abs(adjustment.points - truth) < 3.5 * u).all()


class TestFaults:
    def test_a_pivot_without_mark_and_reading_is_missing(self):
        rng = np.random.default_rng(1)
        _, pictures = photographed(rng, 2, WITH_WHEELS[1:])
        with pytest.raises(MissingMark) as missing:
            adjust(pictures)
        assert missing.value.pivot == PIVOTS[0]

    def test_a_camera_behind_the_axle_is_said(self):
        rng = np.random.default_rng(2)
        vehicle = drawn_vehicle(rng)
        place = np.array([-2500.0, 100.0, 600.0])
        camera = Camera(place, looking_at(place, np.array([0.0, 0.0, 420.0])))
        with pytest.raises(NoCamera, match="behind the axle"):
            adjust([photograph(1, camera, vehicle, WITH_WHEELS, rng)])

    def test_a_photograph_without_a_mark_is_left_out(self):
        rng = np.random.default_rng(3)
        _, pictures = photographed(rng, 1)
        empty = replace(pictures[0], number=2, marks=(Mark(OWN_POINTS[0], 5.0, 5.0),))
        alone, with_empty = adjust(pictures), adjust([*pictures, empty])
        np.testing.assert_allclose(alone.points, with_empty.points)
        assert len(with_empty.cameras) == 1

    def test_an_unknown_focal_length_leaves_more_doubt_about_the_camera(self):
        rng = np.random.default_rng(4)
        _, pictures = photographed(rng, 1)
        assert pictures[0].f35 == F35
        unknown = adjust([replace(pictures[0], f35=None)])
        known = adjust(pictures)

        def u_ahead(adjustment):
            return sqrt(adjustment.network.cofactor[-10, -10])

        assert u_ahead(unknown) > 2 * u_ahead(known)
