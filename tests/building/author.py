"""Building models made with the library's own authoring interface; every length is given in inches."""

import math

import ifcopenshell
import ifcopenshell.api.aggregate
import ifcopenshell.api.context
import ifcopenshell.api.feature
import ifcopenshell.api.geometry
import ifcopenshell.api.material
import ifcopenshell.api.owner
import ifcopenshell.api.project
import ifcopenshell.api.pset
import ifcopenshell.api.root
import ifcopenshell.api.spatial
import ifcopenshell.api.type
import ifcopenshell.api.unit
import numpy as np

INCHES = {"METRE": 1 / 0.0254, "MILLIMETRE": 1 / 25.4, "foot": 12.0, "inch": 1.0}


def turned(x, y, z=0.0, degrees=0.0):
    """A placement, in inches, turned about z."""
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return np.array([[c, -s, 0, x], [s, c, 0, y], [0, 0, 1, z], [0, 0, 0, 1.0]])


class Author:
    """A model with one storey or more, in the schema and the unit that are asked for."""

    def __init__(self, schema="IFC4", unit="MILLIMETRE"):
        self.file = file = ifcopenshell.api.project.create_file(version=schema)
        self.inch = INCHES[unit]
        self.old = schema == "IFC2X3"
        if self.old:
            self._own()
        self.project = self._new("IfcProject", "Kestrel Point")
        if unit in ("foot", "inch"):
            length = ifcopenshell.api.unit.add_conversion_based_unit(file, name=unit)
        else:
            prefix = "MILLI" if unit == "MILLIMETRE" else None
            length = ifcopenshell.api.unit.add_si_unit(file, unit_type="LENGTHUNIT", prefix=prefix)
        angle = ifcopenshell.api.unit.add_si_unit(file, unit_type="PLANEANGLEUNIT")
        ifcopenshell.api.unit.assign_unit(file, units=[length, angle])
        model = ifcopenshell.api.context.add_context(file, context_type="Model")
        plan = ifcopenshell.api.context.add_context(file, context_type="Plan")
        context = ifcopenshell.api.context.add_context
        self.body = context(file, "Model", "Body", "MODEL_VIEW", parent=model)
        self.plan = context(file, "Plan", "FootPrint", "PLAN_VIEW", parent=plan)
        self.site, self.building = self._new("IfcSite", "Quay"), self._new("IfcBuilding", "Terminal")
        ifcopenshell.api.aggregate.assign_object(file, [self.site], self.project)
        ifcopenshell.api.aggregate.assign_object(file, [self.building], self.site)
        for each in (self.site, self.building):
            self.place(each, np.eye(4))
        self.storey = self.add_storey("Level 1", 0.0)
        self.types = {}

    def _own(self):
        """The user and the program that the old schema asks for."""
        api, file = ifcopenshell.api.owner, self.file
        person = api.add_person(file, identification="author", family_name="Author", given_name="The")
        office = api.add_organisation(file, identification="office", name="Office")
        api.add_person_and_organisation(file, person=person, organisation=office)
        api.add_application(file, office, "1", "author", "author")

    def add_storey(self, name, elevation):
        storey = self._new("IfcBuildingStorey", name)
        ifcopenshell.api.aggregate.assign_object(self.file, [storey], self.building)
        self.place(storey, turned(0, 0, elevation))
        storey.Elevation = elevation / self.inch
        self.storey = storey
        return storey

    def _new(self, kind, name):
        return ifcopenshell.api.root.create_entity(self.file, ifc_class=kind, name=name)

    def place(self, product, matrix):
        scaled = matrix.copy()
        scaled[:3, 3] /= self.inch
        ifcopenshell.api.geometry.edit_object_placement(
            self.file, product=product, matrix=scaled, is_si=False
        )

    def write(self, path):
        self.file.write(str(path))
        return path

    # --- shapes ---

    def prism(self, points, bottom, top):
        """A solid over a polygon, in the product's own axes."""
        file, u = self.file, self.inch
        corners = [file.createIfcCartesianPoint((x / u, y / u)) for x, y in points]
        outline = file.createIfcArbitraryClosedProfileDef(
            "AREA", None, file.createIfcPolyline([*corners, corners[0]])
        )
        return self._solid(outline, bottom, top)

    def _solid(self, profile, bottom, top):
        file, u = self.file, self.inch
        at = file.createIfcAxis2Placement3D(file.createIfcCartesianPoint((0.0, 0.0, bottom / u)))
        up = file.createIfcDirection((0.0, 0.0, 1.0))
        return file.createIfcExtrudedAreaSolid(profile, at, up, (top - bottom) / u)

    def cylinder(self, x, y, radius, bottom, top):
        file, u = self.file, self.inch
        at = file.createIfcAxis2Placement2D(file.createIfcCartesianPoint((x / u, y / u)))
        return self._solid(file.createIfcCircleProfileDef("AREA", None, at, radius / u), bottom, top)

    def box(self, x_0, x_1, y_0, y_1, bottom, top):
        return self.prism([(x_0, y_0), (x_1, y_0), (x_1, y_1), (x_0, y_1)], bottom, top)

    def shape(self, product, solids):
        body = self.file.createIfcShapeRepresentation(self.body, "Body", "SweptSolid", solids)
        self._represent(product, body)

    def _represent(self, product, representation):
        ifcopenshell.api.geometry.assign_representation(self.file, product, representation)

    def thing(self, kind, name, solids, matrix=None, **attributes):
        """An element with a shape, in its storey."""
        made = self._new(kind, name)
        for key, value in attributes.items():
            setattr(made, key, value)
        self.place(made, np.eye(4) if matrix is None else matrix)
        self.shape(made, solids)
        if kind == "IfcSpace":
            if self.old:
                made.InteriorOrExteriorSpace = "INTERNAL"
            ifcopenshell.api.aggregate.assign_object(self.file, [made], self.storey)
        else:
            ifcopenshell.api.spatial.assign_container(self.file, [made], self.storey)
        return made

    # --- walls and doors ---

    def wall(
        self, matrix, length, layers, height=120.0, flipped=False, offset=0.0, name="Partition", usage=True
    ):
        """A wall along its own x, its layers from `offset` up, or down where `flipped`."""
        total = math.fsum(thickness for _, thickness in layers)
        low, high = (offset - total, offset) if flipped else (offset, offset + total)
        wall = self.thing("IfcWall", name, [self.box(0, length, low, high, 0, height)], matrix)
        if layers[0][0]:
            self._layers(wall, layers, flipped, offset, usage)
        return wall

    def _layers(self, wall, layers, flipped, offset, usage):
        file, api = self.file, ifcopenshell.api.material
        made = api.add_material_set(file, name="wall", set_type="IfcMaterialLayerSet")
        for name, thickness in layers:
            layer = api.add_layer(file, layer_set=made, material=api.add_material(file, name=name))
            api.edit_layer(file, layer=layer, attributes={"LayerThickness": thickness / self.inch})
        if usage:
            way = "NEGATIVE" if flipped else "POSITIVE"
            made = file.createIfcMaterialLayerSetUsage(made, "AXIS2", way, offset / self.inch)
        file.createIfcRelAssociatesMaterial(ifcopenshell.guid.new(), self._owner(), None, None, [wall], made)

    def _owner(self):
        return ifcopenshell.api.owner.create_owner_history(self.file) if self.old else None

    def door(self, wall, matrix, width, height, operation="SINGLE_SWING_LEFT", *, tag="", name="Door",
             psets=None, lining=None, panel=None, body=True, frame=None, leaf=None, handle=None,
             through=(-60.0, 60.0), swing=None):  # fmt: skip
        """A door in an opening of a wall (None: standing free), its operation on its type or style."""
        file, u = self.file, self.inch
        door = self._new("IfcDoor", name)
        door.OverallWidth, door.OverallHeight, door.Tag = width / u, height / u, tag
        self.place(door, matrix)
        ifcopenshell.api.spatial.assign_container(file, [door], self.storey)
        if wall is not None:
            opening = self._new("IfcOpeningElement", "Opening")
            self.place(opening, matrix)
            self.shape(opening, [self.box(0, width, *through, 0, height)])
            ifcopenshell.api.feature.add_feature(file, feature=opening, element=wall)
            ifcopenshell.api.feature.add_filling(file, opening=opening, element=door)
            door.FillsVoids[0].OwnerHistory = self._owner()
        if body:
            self._door_shape(door, width, height, frame or (0.0, 4.75), leaf or (3.0, 4.75), handle)
        if swing is not None:
            self._drawn_swing(door, width, *swing)
        self._type(door, operation, lining or {}, panel or {})
        for title, values in (psets or {}).items():
            made = ifcopenshell.api.pset.add_pset(file, product=door, name=title)
            ifcopenshell.api.pset.edit_pset(file, pset=made, properties=values)
        return door

    def _door_shape(self, door, width, height, frame, leaf, handle):
        solids = [
            self.box(0, 2, *frame, 0, height),
            self.box(width - 2, width, *frame, 0, height),
            self.box(2, width - 2, *frame, height - 2, height),
            self.box(2, width - 2, *leaf, 0.75, height - 2),
        ]
        if handle is not None:
            solids.append(self.box(handle - 2, handle + 2, leaf[0] - 3, leaf[1] + 3, 37, 39))
        self.shape(door, solids)

    def _drawn_swing(self, door, width, hinges, opens):
        file, u = self.file, self.inch
        point = file.createIfcCartesianPoint
        x = 0.0 if hinges < 0 else width
        at = file.createIfcAxis2Placement2D(point((x / u, 0.0)), file.createIfcDirection((1.0, 0.0)))
        ends = point(((x - hinges * width) / u, 0.0)), point((x / u, opens * width / u))
        arc = file.createIfcTrimmedCurve(
            file.createIfcCircle(at, width / u), [ends[0]], [ends[1]], True, "CARTESIAN"
        )
        drawn = file.createIfcShapeRepresentation(self.plan, "FootPrint", "Curve2D", [arc])
        self._represent(door, drawn)

    def _type(self, door, operation, lining, panel):
        key = (operation, tuple(lining.items()), tuple(panel.items()))
        if key not in self.types:
            self.types[key] = self._made_type(operation, lining, panel)
        ifcopenshell.api.type.assign_type(self.file, [door], self.types[key])

    def _made_type(self, operation, lining, panel):
        file = self.file
        made = self._new("IfcDoorStyle" if self.old else "IfcDoorType", f"Type {len(self.types) + 1}")
        made.OperationType = operation
        if self.old:
            made.ConstructionType, made.ParameterTakesPrecedence, made.Sizeable = "NOTDEFINED", False, False
        else:
            made.PredefinedType = "DOOR"
        sets = []
        if lining:
            values = {key: value / self.inch for key, value in lining.items()}
            sets.append(
                file.create_entity(
                    "IfcDoorLiningProperties", ifcopenshell.guid.new(), self._owner(), **values
                )
            )
        if panel:
            values = {key: value / self.inch for key, value in panel.items()}
            sets.append(
                file.create_entity("IfcDoorPanelProperties", ifcopenshell.guid.new(), self._owner(),
                                   PanelOperation="SWINGING", PanelPosition="LEFT", **values)
            )  # fmt: skip
        made.HasPropertySets = sets or None
        return made
