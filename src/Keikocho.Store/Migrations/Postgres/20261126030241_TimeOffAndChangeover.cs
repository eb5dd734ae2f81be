using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Postgres
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
                type: "date",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "TimeOffs",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    RankId = table.Column<Guid>(type: "uuid", nullable: false),
                    Percent = table.Column<int>(type: "integer", nullable: false),
                    Why = table.Column<byte[]>(type: "bytea", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
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

            // Row-level security for the table that is new: a connection sees the club that it named, and no other.
            migrationBuilder.Sql("""
                ALTER TABLE "TimeOffs" ENABLE ROW LEVEL SECURITY;
                ALTER TABLE "TimeOffs" FORCE ROW LEVEL SECURITY;
                CREATE POLICY own_club ON "TimeOffs" USING ("Club" = current_setting('keikocho.club', true)::int);
                """);
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
