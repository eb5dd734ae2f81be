using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class TimeOffAndChangeover : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateOnly>(
                name: "Changeover",
                table: "Editions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "TimeOffs",
                columns: table => new
                {
                    Club = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PersonId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    RankId = table.Column<byte[]>(type: "BLOB", nullable: false),
                    Percent = table.Column<int>(type: "INTEGER", nullable: false),
                    Why = table.Column<byte[]>(type: "BLOB", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    ById = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TimeOffs", x => new { x.Club, x.Id });
                    table.ForeignKey(
                        name: "FK_TimeOffs_People_Club_PersonId",
                        columns: x => new { x.Club, x.PersonId },
                        principalTable: "People",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_TimeOffs_Ranks_Club_RankId",
                        columns: x => new { x.Club, x.RankId },
                        principalTable: "Ranks",
                        principalColumns: new[] { "Club", "Id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_TimeOffs_Club_PersonId",
                table: "TimeOffs",
                columns: new[] { "Club", "PersonId" });

            migrationBuilder.CreateIndex(
                name: "IX_TimeOffs_Club_RankId",
                table: "TimeOffs",
                columns: new[] { "Club", "RankId" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "TimeOffs");

            migrationBuilder.DropColumn(
                name: "Changeover",
                table: "Editions");
        }
    }
}
