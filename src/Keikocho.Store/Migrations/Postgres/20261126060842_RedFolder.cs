using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Keikocho.Store.Migrations.Postgres
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
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Entrance",
                table: "Halls",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Hospital",
                table: "Halls",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "Welfare",
                table: "Clubs",
                type: "bytea",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "CareAsked",
                columns: table => new
                {
                    Club = table.Column<int>(type: "integer", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: false)
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
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Heading = table.Column<int>(type: "integer", nullable: false),
                    Text = table.Column<byte[]>(type: "bytea", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
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
                    Club = table.Column<int>(type: "integer", nullable: false),
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    At = table.Column<short>(type: "smallint", nullable: true),
                    Activity = table.Column<int>(type: "integer", nullable: false),
                    Words = table.Column<byte[]>(type: "bytea", nullable: false),
                    ById = table.Column<Guid>(type: "uuid", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
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

            // Row-level security for the tables that are new: a connection sees the club that it named, and no other.
            migrationBuilder.Sql("""
                DO $$
                DECLARE t text;
                BEGIN
                    FOREACH t IN ARRAY ARRAY['CareNotes', 'CareAsked', 'NearMisses']
                    LOOP
                        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
                        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
                        EXECUTE format('CREATE POLICY own_club ON %I USING ("Club" = current_setting(''keikocho.club'', true)::int)', t);
                    END LOOP;
                END $$;
                """);

            // What was written of a near miss stays as it was written.
            migrationBuilder.Sql("CREATE TRIGGER near_misses_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON \"NearMisses\" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();");
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
