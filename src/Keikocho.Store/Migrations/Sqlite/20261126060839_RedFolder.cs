using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class RedFolder : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Address",
                table: "Halls",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Entrance",
                table: "Halls",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Hospital",
                table: "Halls",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "Welfare",
                table: "Clubs",
                type: "BLOB",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "CareAsked",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CareAsked", x => new { x.Club, x.PersonId });
                    table.ForeignKey(
                        name: "FK_CareAsked_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "CareNotes",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Heading = table.Column<int>(type: "INTEGER", nullable: false),
                    Text = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CareNotes", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_CareNotes_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "NearMisses",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    At = table.Column<short>(type: "INTEGER", nullable: true),
                    Activity = table.Column<int>(type: "INTEGER", nullable: false),
                    Words = table.Column<byte[]>(type: "BLOB", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_NearMisses", x => new { x.Club, x.Id });
                });

            migrationBuilder.CreateIndex(
                name: "IX_CareNotes_Club_PersonId_Heading",
                table: "CareNotes",
                columns: new[] { "Club", "PersonId", "Heading" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_NearMisses_Club_On",
                table: "NearMisses",
                columns: new[] { "Club", "On" });

            // What was written of a near miss stays as it was written.
            migrationBuilder.Sql("""
                CREATE TRIGGER near_misses_are_not_changed BEFORE UPDATE ON "NearMisses" BEGIN SELECT RAISE(ABORT, 'NearMisses are append-only.'); END;
                CREATE TRIGGER near_misses_are_not_deleted BEFORE DELETE ON "NearMisses" BEGIN SELECT RAISE(ABORT, 'NearMisses are append-only.'); END;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "CareAsked");

            migrationBuilder.DropTable(
                name: "CareNotes");

            migrationBuilder.DropTable(
                name: "NearMisses");

            migrationBuilder.DropColumn(
                name: "Address",
                table: "Halls");

            migrationBuilder.DropColumn(
                name: "Entrance",
                table: "Halls");

            migrationBuilder.DropColumn(
                name: "Hospital",
                table: "Halls");

            migrationBuilder.DropColumn(
                name: "Welfare",
                table: "Clubs");
        }
    }
}
