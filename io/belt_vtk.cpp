#include "io/belt_vtk.h"

#include "io/roll_mesh.h"
#include "io/state_file_stem.h"
#include "io/surface_fields.h"
#include "io/verdict.h"

#include <fmt/format.h>

#include <vtkCellArray.h>
#include <vtkCellData.h>
#include <vtkFieldData.h>
#include <vtkFloatArray.h>
#include <vtkIntArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkPolyData.h>
#include <vtkStringArray.h>
#include <vtkStructuredGrid.h>
#include <vtkXMLPolyDataWriter.h>
#include <vtkXMLStructuredGridWriter.h>

namespace swale {

namespace {

/// The bytes that `Writer` makes of a data set: appended raw, compressed by LZ4, fast rather than small.
template <class Writer, class DataSet>
std::string file_content(DataSet* data) {
    vtkNew<Writer> writer;
    writer->SetCompressorTypeToLZ4();
    writer->SetInputData(data);
    writer->SetDataModeToAppended();
    writer->EncodeAppendedDataOff();
    writer->WriteToOutputStringOn();
    writer->Write();
    return writer->GetOutputString();
}

vtkNew<vtkFloatArray> point_data(const SurfaceField& field, const std::vector<SurfacePoint>& points) {
    vtkNew<vtkFloatArray> array;
    array->SetName(field.name.c_str());
    array->SetNumberOfComponents(field.size());
    array->SetNumberOfTuples(static_cast<vtkIdType>(points.size()));
    for (int i = 0; i < static_cast<int>(field.components.size()); ++i) array->SetComponentName(i, field.components[i].c_str());
    float* next = array->GetPointer(0);
    for (const SurfacePoint& point : points)
        for (int i = 0; i < field.size(); ++i) *next++ = static_cast<float>(field.value(point, i));
    return array;
}

void add_mode(const char* name, const std::optional<BeltMode>& mode, vtkPointData& data) {
    if (!mode) return;
    vtkNew<vtkFloatArray> array;
    array->SetName(name);
    array->SetNumberOfComponents(3);
    array->SetNumberOfTuples(static_cast<vtkIdType>(mode->motion.size()));
    float* next = array->GetPointer(0);
    for (const Eigen::Vector3d& motion : mode->motion)
        for (const double component : motion) *next++ = static_cast<float>(component);
    data.AddArray(array);
}

vtkNew<vtkPoints> coordinates(size_t count) {
    vtkNew<vtkPoints> points;
    points->SetDataTypeToDouble();
    points->Allocate(static_cast<vtkIdType>(count));
    return points;
}

/// VTK runs first along the index that changes fastest: across the belt.
std::string belt_file(const StateResult& state) {
    const BeltSurface& surface = state.surface;
    vtkNew<vtkPoints> points = coordinates(surface.points.size());
    for (const SurfacePoint& point : surface.points) points->InsertNextPoint(point.position.data());
    vtkNew<vtkStructuredGrid> grid;
    grid->SetDimensions(surface.across, surface.along, 1);
    grid->SetPoints(points);
    for (const SurfaceField& field : surface_fields()) grid->GetPointData()->AddArray(point_data(field, surface.points));
    add_mode("mode_symmetric", state.mode_symmetric, *grid->GetPointData());
    add_mode("mode_antisymmetric", state.mode_antisymmetric, *grid->GetPointData());
    vtkNew<vtkStringArray> name;
    name->SetName("state");
    name->InsertNextValue(state.name);
    grid->GetFieldData()->AddArray(name);
    return file_content<vtkXMLStructuredGridWriter>(grid.Get());
}

std::string rolls_file(const std::vector<NamedRoll>& rolls) {
    vtkNew<vtkPoints> points = coordinates(0);
    vtkNew<vtkCellArray> cells;
    vtkNew<vtkIntArray> numbers;
    numbers->SetName("roll");
    vtkNew<vtkStringArray> names;
    names->SetName("name");
    for (size_t number = 0; number < rolls.size(); ++number) {
        const RollMesh mesh = roll_mesh(rolls[number].roll);
        const vtkIdType first = points->GetNumberOfPoints();
        for (const Eigen::Vector3d& point : mesh.points) points->InsertNextPoint(point.data());
        for (const std::vector<int>& corners : mesh.cells) {
            cells->InsertNextCell(static_cast<int>(corners.size()));
            for (const int corner : corners) cells->InsertCellPoint(first + corner);
            numbers->InsertNextValue(static_cast<int>(number));
            names->InsertNextValue(rolls[number].name);
        }
    }
    vtkNew<vtkPolyData> data;
    data->SetPoints(points);
    data->SetPolys(cells);
    data->GetCellData()->AddArray(numbers);
    data->GetCellData()->AddArray(names);
    return file_content<vtkXMLPolyDataWriter>(data.Get());
}

/// The index of one state's blocks. VTK's own writer of such files can't write whole or not at all.
std::string blocks_file(const std::string& belt, bool with_rolls) {
    std::string text =
        "<?xml version=\"1.0\"?>\n<VTKFile type=\"vtkMultiBlockDataSet\" version=\"1.0\">\n  <vtkMultiBlockDataSet>\n";
    text += fmt::format("    <DataSet index=\"0\" name=\"belt\" file=\"{}\"/>\n", belt);
    if (with_rolls) text += "    <DataSet index=\"1\" name=\"rolls\" file=\"rolls.vtp\"/>\n";
    return text + "  </vtkMultiBlockDataSet>\n</VTKFile>\n";
}

}  // namespace

ResultFileList belt_vtk(const TransitionResult& result) {
    const std::filesystem::path folder = "vtk";
    ResultFileList files;
    if (!result.rolls.empty()) files.push_back({folder / "rolls.vtp", rolls_file(result.rolls)});
    std::string series = "<?xml version=\"1.0\"?>\n<VTKFile type=\"Collection\" version=\"0.1\">\n  <Collection>\n";
    for (size_t i = 0; i < result.states.size(); ++i) {
        if (!converged(result.states[i])) continue;
        const std::string stem = state_file_stem(i + 1, result.states[i].name);
        files.push_back({folder / (stem + "-belt.vts"), belt_file(result.states[i])});
        files.push_back({folder / (stem + ".vtm"), blocks_file(stem + "-belt.vts", !result.rolls.empty())});
        series += fmt::format("    <DataSet timestep=\"{}\" file=\"{}.vtm\"/>\n", i + 1, stem);
    }
    files.push_back({folder / "states.pvd", series + "  </Collection>\n</VTKFile>\n"});
    return files;
}

}  // namespace swale
